package org.restpoint.adapters.serial;

import java.time.Duration;
import java.util.Optional;
import java.util.regex.Pattern;
import org.restpoint.adapters.line.DecimalMark;
import org.restpoint.adapters.line.LinePattern;
import org.restpoint.adapters.quantity.Meaning;

/**
 * How one probe's readings are found in the lines of a serial port. Refuses, with an {@link
 * IllegalArgumentException}, a span that is not above zero and a pattern that lacks a group of the
 * meaning or of the channel.
 *
 * @param line the pattern a line of the probe matches, with a named group for each number of the
 *     meaning
 * @param meaning what those numbers mean
 * @param mark what stands before their decimals
 * @param channel what the pattern's group {@code channel} holds in a line of this probe; empty
 *     where every line that matches is its own
 * @param poll what to send to ask for a line, in the encoding of the line; empty for a probe that
 *     is not asked
 * @param pollEvery how often to ask, the same for all that are asked on one line; without meaning
 *     when {@code poll} is empty
 * @param noDataAfter silence longer than this is told
 */
public record SerialSettings(
    Pattern line,
    Meaning meaning,
    DecimalMark mark,
    Optional<String> channel,
    Optional<String> poll,
    Duration pollEvery,
    Duration noDataAfter) {

  public SerialSettings {
    requireAboveZero("poll interval", pollEvery);
    requireAboveZero("no-data limit", noDataAfter);
    new LinePattern(line, meaning, mark, channel);
  }

  private static void requireAboveZero(String what, Duration span) {
    if (span.isZero() || span.isNegative()) {
      throw new IllegalArgumentException("the %s %s is not above zero".formatted(what, span));
    }
  }
}
