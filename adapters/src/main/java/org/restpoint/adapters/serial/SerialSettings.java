package org.restpoint.adapters.serial;

import java.time.Duration;
import java.util.Optional;
import java.util.regex.Pattern;
import org.restpoint.adapters.line.LinePattern;

/**
 * How a serial line is read: 8 data bits, no parity, 1 stop bit, no flow control. Refuses, with an
 * {@link IllegalArgumentException}, an empty port, a speed or a span that is not above zero, and a
 * pattern with neither of the groups {@code millivolts} and {@code celsius}.
 *
 * @param port the device's path, or its bare name under {@code /dev}; a symbolic link is followed
 *     anew on each attempt to open it
 * @param baud bits per second
 * @param line the pattern a line must match, with the named group {@code millivolts}, {@code
 *     celsius} (alone for a thermometer), or both
 * @param poll what to send to ask for a line, sent as it stands, one byte a character (ISO 8859-1);
 *     empty for a meter that sends by itself
 * @param pollEvery how often to ask; without meaning when {@code poll} is empty
 * @param noDataAfter silence longer than this is told
 */
public record SerialSettings(
    String port,
    int baud,
    Pattern line,
    Optional<String> poll,
    Duration pollEvery,
    Duration noDataAfter) {

  public SerialSettings {
    if (port.isBlank()) {
      throw new IllegalArgumentException("the serial port has no name");
    }
    if (baud <= 0) {
      throw new IllegalArgumentException("the speed %d baud is not above zero".formatted(baud));
    }
    requireAboveZero("poll interval", pollEvery);
    requireAboveZero("no-data limit", noDataAfter);
    new LinePattern(line);
  }

  private static void requireAboveZero(String what, Duration span) {
    if (span.isZero() || span.isNegative()) {
      throw new IllegalArgumentException("the %s %s is not above zero".formatted(what, span));
    }
  }
}
