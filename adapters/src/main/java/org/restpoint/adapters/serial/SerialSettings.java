package org.restpoint.adapters.serial;

import java.time.Duration;
import java.util.Optional;
import java.util.regex.Pattern;
import org.restpoint.adapters.line.LinePattern;
import org.restpoint.adapters.quantity.Meaning;

/**
 * How a serial line is read. Refuses, with an {@link IllegalArgumentException}, a span that is not
 * above zero and a pattern that lacks a group of the meaning.
 *
 * @param port how the port is opened
 * @param line the pattern a line must match, with a named group for each number of the meaning
 * @param meaning what those numbers mean
 * @param poll what to send to ask for a line, sent as it stands, one byte a character (ISO 8859-1);
 *     empty for a meter that sends by itself
 * @param pollEvery how often to ask; without meaning when {@code poll} is empty
 * @param noDataAfter silence longer than this is told
 */
public record SerialSettings(
    PortSettings port,
    Pattern line,
    Meaning meaning,
    Optional<String> poll,
    Duration pollEvery,
    Duration noDataAfter) {

  public SerialSettings {
    requireAboveZero("poll interval", pollEvery);
    requireAboveZero("no-data limit", noDataAfter);
    new LinePattern(line, meaning);
  }

  private static void requireAboveZero(String what, Duration span) {
    if (span.isZero() || span.isNegative()) {
      throw new IllegalArgumentException("the %s %s is not above zero".formatted(what, span));
    }
  }
}
