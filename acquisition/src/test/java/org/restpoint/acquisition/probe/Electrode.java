package org.restpoint.acquisition.probe;

import org.restpoint.stability.chemistry.Analyte;

/**
 * An electrode that follows the Nernst equation at 97 % of its slope; the constants are written out
 * here on their own (SI, 2019), so that a wrong one elsewhere would show.
 */
record Electrode(int charge, double slopeShare) {

  private static final double OFFSET_MILLIVOLTS = 214.5;

  static Electrode of(Analyte analyte) {
    return new Electrode(analyte.charge(), 0.97);
  }

  double millivolts(double molesPerLitre, double celsius) {
    double kelvin = 273.15 + celsius;
    double slope = 1000 * 8.31446261815324 * kelvin / (charge * 96485.33212331001) * slopeShare;
    return OFFSET_MILLIVOLTS + slope * Math.log(molesPerLitre);
  }
}
