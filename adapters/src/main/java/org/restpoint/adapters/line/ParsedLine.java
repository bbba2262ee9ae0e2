package org.restpoint.adapters.line;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.OptionalDouble;
import org.restpoint.stability.reading.Reading;

/** What a line says. */
public sealed interface ParsedLine {

  /**
   * The line is a reading: a potential, a temperature, or both.
   *
   * @param millivolts potential in mV; empty for a thermometer
   * @param celsius temperature in °C; empty where the line carries none
   */
  record Values(OptionalDouble millivolts, OptionalDouble celsius) implements ParsedLine {

    /** These values as a reading taken at {@code time}, cut to the millisecond. */
    public Reading at(Instant time) {
      return new Reading(time.truncatedTo(ChronoUnit.MILLIS), millivolts, celsius);
    }
  }

  /**
   * The line is not a reading.
   *
   * @param reason why, a clause without a full stop
   */
  record Rejected(String reason) implements ParsedLine {}
}
