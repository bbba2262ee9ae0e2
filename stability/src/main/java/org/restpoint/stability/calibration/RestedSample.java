package org.restpoint.stability.calibration;

import org.restpoint.stability.electrode.Nernst;

/**
 * A sample whose potential has come to rest, with what is known of it besides.
 *
 * @param millivolts the resting potential E
 * @param standardUncertaintyMillivolts u(E), k = 1
 * @param celsius its temperature, above absolute zero
 * @param standardUncertaintyKelvin u(T), k = 1
 * @param activityCoefficient γ of the ion in it, above zero; 1 where an adjustor makes samples and
 *     standards alike
 * @param relativeUncertaintyOfActivityCoefficient u(γ)/γ, k = 1
 * @param backgroundMolesPerLitre what interfering ions add to the activity that the electrode sees,
 *     0 or above
 * @param uncertaintyOfBackground its standard uncertainty, mol/L, k = 1
 */
public record RestedSample(
    double millivolts,
    double standardUncertaintyMillivolts,
    double celsius,
    double standardUncertaintyKelvin,
    double activityCoefficient,
    double relativeUncertaintyOfActivityCoefficient,
    double backgroundMolesPerLitre,
    double uncertaintyOfBackground) {

  public RestedSample {
    if (!Double.isFinite(millivolts)) {
      throw new IllegalArgumentException("a potential is a finite number, not " + millivolts);
    }
    Nernst.kelvin(celsius); // refuses what is not above absolute zero
    if (!(activityCoefficient > 0) || Double.isInfinite(activityCoefficient)) {
      throw new IllegalArgumentException("an activity coefficient is above zero");
    }
    requireNotNegative(standardUncertaintyMillivolts);
    requireNotNegative(standardUncertaintyKelvin);
    requireNotNegative(relativeUncertaintyOfActivityCoefficient);
    requireNotNegative(backgroundMolesPerLitre);
    requireNotNegative(uncertaintyOfBackground);
  }

  private static void requireNotNegative(double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException("a finite number, 0 or above, not " + value);
    }
  }

  /** A sample made alike the standards, with nothing in it that interferes. */
  public static RestedSample of(
      double millivolts,
      double standardUncertaintyMillivolts,
      double celsius,
      double standardUncertaintyKelvin) {
    return new RestedSample(
        millivolts, standardUncertaintyMillivolts, celsius, standardUncertaintyKelvin, 1, 0, 0, 0);
  }

  /** The same at another potential. */
  public RestedSample withMillivolts(double other) {
    return new RestedSample(
        other,
        standardUncertaintyMillivolts,
        celsius,
        standardUncertaintyKelvin,
        activityCoefficient,
        relativeUncertaintyOfActivityCoefficient,
        backgroundMolesPerLitre,
        uncertaintyOfBackground);
  }

  /** The same with an activity coefficient of its own. */
  public RestedSample withActivityCoefficient(double coefficient, double relativeUncertainty) {
    return new RestedSample(
        millivolts,
        standardUncertaintyMillivolts,
        celsius,
        standardUncertaintyKelvin,
        coefficient,
        relativeUncertainty,
        backgroundMolesPerLitre,
        uncertaintyOfBackground);
  }

  /** The same with interfering ions that are known. */
  public RestedSample withBackground(double molesPerLitre, double standardUncertainty) {
    return new RestedSample(
        millivolts,
        standardUncertaintyMillivolts,
        celsius,
        standardUncertaintyKelvin,
        activityCoefficient,
        relativeUncertaintyOfActivityCoefficient,
        molesPerLitre,
        standardUncertainty);
  }
}
