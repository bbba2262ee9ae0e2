package org.restpoint.stability.thermometer;

import org.restpoint.stability.electrode.Nernst;

/**
 * A thermistor's resistance at one temperature, from its table or a bath.
 *
 * @param ohms Ω, finite and above zero
 * @param celsius °C, above absolute zero
 */
public record ThermistorPoint(double ohms, double celsius) {

  public ThermistorPoint {
    if (!(ohms > 0) || Double.isInfinite(ohms)) {
      throw new IllegalArgumentException("a resistance is finite and above zero, not " + ohms);
    }
    Nernst.kelvin(celsius);
  }

  double logarithm() {
    return Math.log(ohms);
  }

  /** 1/T, 1/K. */
  double perKelvin() {
    return 1 / Nernst.kelvin(celsius);
  }
}
