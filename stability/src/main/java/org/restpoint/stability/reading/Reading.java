package org.restpoint.stability.reading;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.OptionalDouble;

/**
 * One raw reading of a probe, as it arrived. Refuses, with an {@link IllegalArgumentException}, a
 * value that is not finite or not above absolute zero, a reading without any value, and a time
 * finer than a millisecond.
 *
 * @param time when it was taken, to the millisecond: that is what a recording keeps, so a recording
 *     replayed sees the very same instants
 * @param millivolts potential against the reference electrode in mV; empty for a thermometer
 * @param celsius temperature of the solution in °C, above −273.15; empty where the line carries
 *     none
 */
public record Reading(Instant time, OptionalDouble millivolts, OptionalDouble celsius) {

  /** Absolute zero in °C (SI, by definition of the degree Celsius). */
  private static final double ABSOLUTE_ZERO_CELSIUS = -273.15;

  public Reading {
    if (!time.equals(time.truncatedTo(ChronoUnit.MILLIS))) {
      throw new IllegalArgumentException("the time of a reading is finer than a millisecond");
    }
    if (millivolts.isEmpty() && celsius.isEmpty()) {
      throw new IllegalArgumentException("a reading needs a potential or a temperature");
    }
    if (millivolts.isPresent() && !Double.isFinite(millivolts.getAsDouble())) {
      throw new IllegalArgumentException("the potential is not a finite number");
    }
    if (celsius.isPresent()
        && !(Double.isFinite(celsius.getAsDouble())
            && celsius.getAsDouble() > ABSOLUTE_ZERO_CELSIUS)) {
      throw new IllegalArgumentException("the temperature is not a number above absolute zero");
    }
  }

  /** A reading of an electrode without a thermometer. */
  public static Reading ofMillivolts(Instant time, double millivolts) {
    return new Reading(time, OptionalDouble.of(millivolts), OptionalDouble.empty());
  }

  /** A reading of an electrode and of the thermometer beside it. */
  public static Reading of(Instant time, double millivolts, double celsius) {
    return new Reading(time, OptionalDouble.of(millivolts), OptionalDouble.of(celsius));
  }
}
