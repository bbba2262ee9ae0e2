package org.restpoint.config.station;

/** A thermometer whose resistance is sent. */
public sealed interface Thermometer {

  /**
   * Platinum by IEC 60751.
   *
   * @param ohmsAtZero its resistance at 0 °C, in Ω
   */
  record Platinum(double ohmsAtZero) implements Thermometer {}

  /**
   * A thermistor by two figures of its data sheet.
   *
   * @param ohms its resistance at the reference, in Ω
   * @param celsius the reference, in °C
   * @param betaKelvin its β, in K
   */
  record Beta(double ohms, double celsius, double betaKelvin) implements Thermometer {}

  /**
   * A thermistor by the coefficients of Steinhart and Hart, with R in Ω and T in K.
   *
   * @param a 1/K
   * @param b 1/K
   * @param c 1/K
   */
  record SteinhartHart(double a, double b, double c) implements Thermometer {}
}
