package org.restpoint.adapters.simulated;

/** The slope of an ideal electrode, for the simulation alone. */
final class IdealSlope {

  /** Molar gas constant R in J/(mol K), exact; SI Brochure, 9th edition (2019), k times N_A. */
  private static final double GAS_CONSTANT = 8.31446261815324;

  /** Faraday constant F in C/mol, exact; SI Brochure, 9th edition (2019), e times N_A. */
  private static final double FARADAY_CONSTANT = 96485.33212331001;

  private static final double KELVIN_AT_ZERO_CELSIUS = 273.15;
  private static final double MILLIVOLTS_PER_VOLT = 1_000.0;

  private IdealSlope() {}

  /** ln 10 · R · T / (z · F) in mV per decade of concentration; negative for an anion. */
  static double millivoltsPerDecade(double celsius, int charge) {
    double kelvin = celsius + KELVIN_AT_ZERO_CELSIUS;
    return MILLIVOLTS_PER_VOLT * Math.log(10) * GAS_CONSTANT * kelvin / (charge * FARADAY_CONSTANT);
  }
}
