package org.restpoint.adapters.simulated;

import java.time.Duration;

/**
 * How a temperature swings about its mean: by {@code amplitude · sin(2π · t / period)}, t from the
 * start. Refuses, with an {@link IllegalArgumentException}, an amplitude outside 0 to 50 K and a
 * period that is not above 0.
 *
 * @param amplitudeKelvin how far it goes up and down, in K
 * @param period from one warmest time to the next
 */
public record Swing(double amplitudeKelvin, Duration period) {

  /** A temperature that does not swing. */
  public static final Swing NONE = new Swing(0, Duration.ofDays(1));

  private static final double MOST_KELVIN = 50;

  public Swing {
    if (!(amplitudeKelvin >= 0 && amplitudeKelvin <= MOST_KELVIN)) {
      throw new IllegalArgumentException("a temperature swings by 0 to 50 K: " + amplitudeKelvin);
    }
    if (period.isNegative() || period.isZero()) {
      throw new IllegalArgumentException("the period of a swing is not above 0");
    }
  }

  /** The temperature in °C at a time since the start. */
  double celsius(double meanCelsius, Duration elapsed) {
    double turns = (double) elapsed.toNanos() / period.toNanos();
    return meanCelsius + amplitudeKelvin * Math.sin(2 * Math.PI * turns);
  }
}
