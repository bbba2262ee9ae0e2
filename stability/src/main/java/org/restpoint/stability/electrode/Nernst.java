package org.restpoint.stability.electrode;

/**
 * The Nernst slope.
 *
 * <p>{@code S = 1000 · ln 10 · R · T / (z · F)}, mV per decade of activity, with T in K and z the
 * charge number of the ion: positive for cations, negative for anions.
 *
 * <p>Edge results: at absolute zero and below, or for z = 0, there is no slope and an {@link
 * IllegalArgumentException} says so.
 *
 * <p>Reference: E. R. Cohen et al., Quantities, Units and Symbols in Physical Chemistry (IUPAC
 * Green Book), 3rd ed., 2007, section 2.13; constants exact since the SI of 2019 (BIPM, SI
 * Brochure, 9th ed.; Newell et al., CODATA 2017, Metrologia 55 (2018) L13).
 */
public final class Nernst {

  /** Molar gas constant R = k · N_A, J/(mol K): 1.380649e-23 · 6.02214076e23, exact. */
  public static final double GAS_CONSTANT = 8.31446261815324;

  /** Faraday constant F = e · N_A, C/mol: 1.602176634e-19 · 6.02214076e23, exact. */
  public static final double FARADAY_CONSTANT = 96485.33212331001;

  /** The zero of the Celsius scale in K, exact. */
  public static final double ZERO_CELSIUS_KELVIN = 273.15;

  private Nernst() {}

  /** Thermodynamic temperature in K, above zero, of a Celsius temperature. */
  public static double kelvin(double celsius) {
    double kelvin = celsius + ZERO_CELSIUS_KELVIN;
    if (!(kelvin > 0) || Double.isInfinite(kelvin)) {
      throw new IllegalArgumentException(
          "a temperature is above absolute zero, not " + celsius + " °C");
    }
    return kelvin;
  }

  /** Ideal slope in mV/decade, with the sign of the charge. */
  public static double idealSlopeMillivoltsPerDecade(int charge, double celsius) {
    if (charge == 0) {
      throw new IllegalArgumentException("an ion has a charge");
    }
    return 1000 * Math.log(10) * GAS_CONSTANT * kelvin(celsius) / (charge * FARADAY_CONSTANT);
  }
}
