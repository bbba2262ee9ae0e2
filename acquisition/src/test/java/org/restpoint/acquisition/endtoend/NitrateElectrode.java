package org.restpoint.acquisition.endtoend;

/**
 * An invented nitrate electrode by the Nernst equation, reckoned apart from the service's own:
 *
 * <pre>E = E0 + S · log10(c)        S = −0.97 · 1000 · ln 10 · R · (t + 273.15) / F</pre>
 *
 * with E in mV and c in mol/L, E0 = 31.4 mV. R and F are exact (BIPM, The International System of
 * Units, 9th edition, 2019); N is 14.007 g/mol (IUPAC, abridged).
 */
final class NitrateElectrode {

  private static final double GAS_CONSTANT = 8.31446261815324;
  private static final double FARADAY_CONSTANT = 96485.33212331001;
  private static final double NITROGEN_GRAMS_PER_MOLE = 14.007;
  private static final double SHARE_OF_IDEAL = 0.97;
  private static final double OFFSET_MILLIVOLTS = 31.4;

  private NitrateElectrode() {}

  /** Its slope in mV a decade; negative, since nitrate is an anion. */
  static double slopeMillivoltsPerDecade(double celsius) {
    return -SHARE_OF_IDEAL
        * 1000
        * Math.log(10)
        * GAS_CONSTANT
        * (celsius + 273.15)
        / FARADAY_CONSTANT;
  }

  /** Its resting potential in a solution of so many mg/L nitrate as N. */
  static double millivolts(double milligramsPerLitre, double celsius) {
    double molesPerLitre = milligramsPerLitre / 1000 / NITROGEN_GRAMS_PER_MOLE;
    return OFFSET_MILLIVOLTS + slopeMillivoltsPerDecade(celsius) * Math.log10(molesPerLitre);
  }

  /**
   * How far a concentration between two standards may be off, as a share of it, when each potential
   * is rounded: half a step in the sample's potential and half a step in the line at that place,
   * which lies between the errors of the two standards.
   */
  static double rounding(double stepMillivolts, double celsius) {
    return Math.pow(10, stepMillivolts / -slopeMillivoltsPerDecade(celsius)) - 1;
  }
}
