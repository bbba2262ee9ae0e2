package org.restpoint.stability.activity;

/**
 * What share of an ion's concentration an electrode sees.
 *
 * <p>{@code a = γ·c}, both in mol/L.
 *
 * @param value γ, above zero; 1 in an endlessly dilute solution
 * @param relativeStandardUncertainty u(γ)/γ, k = 1, 0 or above
 * @param beyondValidity whether it was asked for outside what its model was made for
 */
public record ActivityCoefficient(
    double value, double relativeStandardUncertainty, boolean beyondValidity) {

  public ActivityCoefficient {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException("an activity coefficient is above 0, not " + value);
    }
    if (!(relativeStandardUncertainty >= 0) || Double.isInfinite(relativeStandardUncertainty)) {
      throw new IllegalArgumentException(
          "a relative uncertainty is 0 or above, not " + relativeStandardUncertainty);
    }
  }

  /** Activity of a concentration, both mol/L. */
  public double activityOf(double molesPerLitre) {
    return value * molesPerLitre;
  }

  /** Concentration that an activity stands for, both mol/L. */
  public double concentrationOf(double activityMolesPerLitre) {
    return activityMolesPerLitre / value;
  }
}
