package org.restpoint.stability.calibration;

import java.time.Instant;
import org.restpoint.stability.electrode.Nernst;

/**
 * A standard read at rest.
 *
 * @param standard the standard's name
 * @param molesPerLitre its concentration in mol/L of the ion, above zero
 * @param relativeUncertainty standard uncertainty of the concentration as a share of it, 0 or above
 * @param activityCoefficient γ of the ion in it, above zero; 1 where an adjustor makes samples and
 *     standards alike
 * @param millivolts its resting potential
 * @param standardUncertaintyMillivolts how well the potential is known, k = 1, 0 or above
 * @param celsius its temperature, above absolute zero
 * @param time when it came to rest
 */
public record StandardPoint(
    String standard,
    double molesPerLitre,
    double relativeUncertainty,
    double activityCoefficient,
    double millivolts,
    double standardUncertaintyMillivolts,
    double celsius,
    Instant time) {

  public StandardPoint {
    if (!(molesPerLitre > 0) || Double.isInfinite(molesPerLitre)) {
      throw new IllegalArgumentException("a standard's concentration is above zero");
    }
    if (!(activityCoefficient > 0) || Double.isInfinite(activityCoefficient)) {
      throw new IllegalArgumentException("an activity coefficient is above zero");
    }
    requireUncertainty(relativeUncertainty);
    requireUncertainty(standardUncertaintyMillivolts);
    if (!Double.isFinite(millivolts)) {
      throw new IllegalArgumentException("a potential is a finite number");
    }
    Nernst.kelvin(celsius); // refuses what is not above absolute zero
  }

  private static void requireUncertainty(double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException("an uncertainty is a finite number, 0 or above");
    }
  }

  /** The activity a = γ·c, mol/L. */
  public double activity() {
    return activityCoefficient * molesPerLitre;
  }
}
