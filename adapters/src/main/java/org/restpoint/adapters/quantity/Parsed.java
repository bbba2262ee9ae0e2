package org.restpoint.adapters.quantity;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.OptionalDouble;
import org.restpoint.stability.reading.Reading;

/** What a line, a message or a group of registers says. */
public sealed interface Parsed {

  /**
   * It is a reading: a potential, a temperature, or both.
   *
   * @param millivolts potential in mV; empty for a thermometer
   * @param celsius temperature in °C; empty where none came
   */
  record Values(OptionalDouble millivolts, OptionalDouble celsius) implements Parsed {

    /** These values as a reading taken at {@code time}, cut to the millisecond. */
    public Reading at(Instant time) {
      return new Reading(time.truncatedTo(ChronoUnit.MILLIS), millivolts, celsius);
    }
  }

  /**
   * It is not a reading.
   *
   * @param reason why, a clause without a full stop
   */
  record Rejected(String reason) implements Parsed {}
}
