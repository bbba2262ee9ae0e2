package org.restpoint.acquisition.example;

/**
 * An invented electrode, reckoned apart from the service's own code:
 *
 * <pre>
 * E = E0 + S·[p + τ·(log10(a + b) − p)]     S = q · 1000 · ln 10 · R · 298.15/(z · F)     τ = T/298.15
 * </pre>
 *
 * with E in mV, a the activity at the membrane in mol/L, q its share of the ideal slope, p the
 * logarithm of its isopotential activity and b what bends its low end. Between membrane and
 * solution lies a film through which the ion diffuses: moved from a₀ into a₁, after t seconds
 * {@code a = a₁ + (a₀ − a₁)·e^(−t/1.5 s)}. R and F are exact (BIPM, The International System of
 * Units, 9th edition, 2019). StrictMath gives the same digits on every machine.
 */
final class MadeElectrode {

  private static final double GAS_CONSTANT = 8.31446261815324;
  private static final double FARADAY_CONSTANT = 96485.33212331001;
  private static final double KELVIN = 273.15;
  private static final double REFERENCE_KELVIN = 298.15;
  private static final double FILM_SECONDS = 1.5;

  private final double offsetMillivolts;
  private final double slopeMillivolts;
  private final double isopotentialDecades;
  private final double lowEndMolesPerLitre;
  private double atMembrane;

  private MadeElectrode(
      double offset, double slope, double isopotential, double lowEnd, double soakedIn) {
    offsetMillivolts = offset;
    slopeMillivolts = slope;
    isopotentialDecades = isopotential;
    lowEndMolesPerLitre = lowEnd;
    atMembrane = soakedIn;
  }

  /**
   * One that was soaked at its isopotential activity.
   *
   * @param charge z, charge number of its ion
   * @param share q
   * @param offsetMillivolts E0, its potential at 1 mol/L and 25 °C
   * @param isopotentialMolesPerLitre 10^p
   * @param lowEndMolesPerLitre b
   */
  static MadeElectrode of(
      int charge,
      double share,
      double offsetMillivolts,
      double isopotentialMolesPerLitre,
      double lowEndMolesPerLitre) {
    double slope =
        share
            * 1000
            * StrictMath.log(10)
            * GAS_CONSTANT
            * REFERENCE_KELVIN
            / (charge * FARADAY_CONSTANT);
    return new MadeElectrode(
        offsetMillivolts,
        slope,
        StrictMath.log10(isopotentialMolesPerLitre),
        lowEndMolesPerLitre,
        isopotentialMolesPerLitre);
  }

  /** The same electrode soaked in another solution. */
  MadeElectrode soakedIn(double activity) {
    return new MadeElectrode(
        offsetMillivolts, slopeMillivolts, isopotentialDecades, lowEndMolesPerLitre, activity);
  }

  /** Its trace when it is moved into a solution. */
  Trace into(double activity, double celsius) {
    double before = atMembrane;
    atMembrane = activity;
    return seconds ->
        millivolts(
            activity + (before - activity) * StrictMath.exp(-seconds / FILM_SECONDS), celsius);
  }

  private double millivolts(double activity, double celsius) {
    double ratio = (KELVIN + celsius) / REFERENCE_KELVIN;
    double decades = StrictMath.log10(activity + lowEndMolesPerLitre);
    return offsetMillivolts
        + slopeMillivolts * (isopotentialDecades + ratio * (decades - isopotentialDecades));
  }
}
