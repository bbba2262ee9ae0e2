package org.restpoint.adapters.bus;

import java.time.Duration;

/**
 * How one probe on a bus is asked. Refuses, with an {@link IllegalArgumentException}, a span that
 * is not above zero.
 *
 * @param device which one it is, for messages: {@code Modbus unit 5 on serial port /dev/ttyUSB0}
 * @param every how often it is asked; an ask that was missed is not made up for
 * @param noDataAfter silence longer than this is told
 * @param whenSilent what to look at when it does not answer, a sentence without a full stop
 */
public record PollSettings(String device, Duration every, Duration noDataAfter, String whenSilent) {

  public PollSettings {
    requireAboveZero("poll interval", every);
    requireAboveZero("no-data limit", noDataAfter);
  }

  private static void requireAboveZero(String what, Duration span) {
    if (span.isZero() || span.isNegative()) {
      throw new IllegalArgumentException("the %s %s is not above zero".formatted(what, span));
    }
  }
}
