package org.restpoint.stability.fit;

/**
 * Whether residuals are as large as the known uncertainties of the points let expect.
 *
 * <p>{@code χ² = Σ(r_i/u_i)²} with ν degrees of freedom is consistent up to the 95 % quantile of
 * its distribution. Beyond, the uncertainties were too small for what was seen, and the Birge ratio
 * {@code √(χ²/ν)} is the factor that makes them fit. Consistent scatter does not inflate anything:
 * a ratio above 1 there is chance, and one below 1 is never used to shrink an uncertainty.
 *
 * <p>Edge results: with no degree of freedom there is nothing to judge: consistent, factor 1.
 *
 * <p>Reference: R. T. Birge, The calculation of errors by the method of least squares, Phys. Rev.
 * 40 (1932) 207, doi 10.1103/PhysRev.40.207. The limit of 95 % is the common practice of tests.
 *
 * @param chiSquare χ², 0 or above
 * @param degreesOfFreedom ν, 0 or above
 */
public record Consistency(double chiSquare, int degreesOfFreedom) {

  /** The share of consistent fits that is taken as such. */
  public static final double LEVEL = 0.95;

  /** Refuses a negative χ² or ν. */
  public Consistency {
    if (!(chiSquare >= 0) || degreesOfFreedom < 0) {
      throw new IllegalArgumentException(
          "χ² and its degrees of freedom are 0 or above, found "
              + chiSquare
              + " and "
              + degreesOfFreedom);
    }
  }

  /** True up to the 95 % quantile of χ²(ν). */
  public boolean consistent() {
    return degreesOfFreedom == 0 || chiSquare <= limit();
  }

  /** Factor on every standard uncertainty: the Birge ratio where inconsistent, else 1. */
  public double inflation() {
    return consistent() ? 1 : Math.sqrt(chiSquare / degreesOfFreedom);
  }

  /** Probability of a χ² as large or larger by chance; 1 with no degree of freedom. */
  public double probability() {
    return degreesOfFreedom == 0 ? 1 : new ChiSquare(degreesOfFreedom).upperTail(chiSquare);
  }

  private double limit() {
    return new ChiSquare(degreesOfFreedom).quantile(LEVEL);
  }
}
