package org.restpoint.stability.thermometer;

import org.restpoint.stability.calibration.Reason;

/** What a resistance says about a temperature. */
public sealed interface ThermometerReading {

  /**
   * A temperature.
   *
   * @param value °C
   * @param kelvinPerOhm dt/dR there, which carries an uncertainty of the resistance over; below
   *     zero for thermistors
   */
  record Celsius(double value, double kelvinPerOhm) implements ThermometerReading {}

  /**
   * No temperature follows from this resistance.
   *
   * @param reason why: {@code thermometer-open}, {@code thermometer-shorted}, {@code
   *     thermometer-out-of-range}, {@code thermometer-negative} or {@code thermometer-unreadable}
   */
  record OutOfRange(Reason reason) implements ThermometerReading {}
}
