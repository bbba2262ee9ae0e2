package org.restpoint.stability.preparation;

/**
 * What a tolerance ± a says about where the value lies.
 *
 * <p>Rectangular: anywhere within it alike, {@code u = a/√3}. Triangular: more likely near the
 * nominal value than near the ends, {@code u = a/√6}.
 *
 * <p>Reference: JCGM 100:2008, 4.3.7 and 4.3.9.
 */
public enum Tolerance {
  /** u = a/√3: for what nothing but the limits is known of. */
  RECTANGULAR(3),
  /** u = a/√6: for glassware, of which few pieces lie near the limits of their class. */
  TRIANGULAR(6);

  private final double divisor;

  Tolerance(double divisor) {
    this.divisor = divisor;
  }

  /** Standard uncertainty of a value within ± {@code halfWidth}, in its unit; k = 1. */
  public double standardUncertainty(double halfWidth) {
    return halfWidth / Math.sqrt(divisor);
  }
}
