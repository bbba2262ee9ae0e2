package org.restpoint.stability.detection;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.restpoint.stability.fit.StudentT;

/**
 * Critical level, detection limit and quantification limit from repeated blanks.
 *
 * <p>With the standard deviation s of n blanks, {@code s0 = s·√(1 + 1/n)} is that of a sample
 * without the ion less the mean blank. {@code L_C = t·s0} with t of ν degrees of freedom at 1 − α:
 * above it the ion is taken to be there, wrongly so in α of all samples without it. {@code L_D =
 * 2·t·s0}: a sample holding that much is missed in α of all cases. {@code L_Q = 10·s0}: there the
 * standard deviation is 10 %. All three are net, above the mean blank.
 *
 * <p>Blanks are concentrations, as read back, and may be below 0. An electrode's blanks come as
 * potentials: {@link #ofPotentials} reads each back first. Read back by a straight line they are
 * all above 0, and at the level part of the curve too high; the curve with b gives values about 0.
 *
 * <p>Edge results: fewer than two blanks have no standard deviation: empty. Blanks all alike give
 * limits of 0: the reading is too coarse to show its scatter, which the caller may want to tell.
 *
 * <p>Reference: L. A. Currie, Nomenclature in evaluation of analytical methods, IUPAC
 * Recommendations 1995, Pure Appl. Chem. 67 (1995) 1699, doi 10.1351/pac199567101699; L. A. Currie,
 * Anal. Chem. 40 (1968) 586, doi 10.1021/ac60259a007.
 *
 * @param mean mean blank, in the unit of concentration
 * @param deviation s, 0 or above, in the same
 * @param blanks n, 1 or more: how many make the mean
 * @param degreesOfFreedom ν of s, above 0; n − 1, or more where s was pooled over days
 * @param significance α, above 0 and below ½
 */
public record BlankLimits(
    double mean, double deviation, int blanks, double degreesOfFreedom, double significance) {

  /** α = β = 0.05, the default of the recommendations. */
  public static final double USUAL_SIGNIFICANCE = 0.05;

  /** The relative standard deviation of 10 % of the recommendations: k_Q = 10. */
  private static final double QUANTIFICATION_FACTOR = 10;

  /** Refuses values outside their ranges. */
  public BlankLimits {
    if (!Double.isFinite(mean) || !(deviation >= 0) || Double.isInfinite(deviation)) {
      throw new IllegalArgumentException(
          "blanks have a finite mean and a standard deviation of 0 or above, found "
              + mean
              + " and "
              + deviation);
    }
    if (blanks < 1 || !(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException(
          "limits need one blank and degrees of freedom above 0, found "
              + blanks
              + " and "
              + degreesOfFreedom);
    }
    if (!(significance > 0 && significance < 0.5)) {
      throw new IllegalArgumentException(
          "a significance is above 0 and below 0.5, found " + significance);
    }
  }

  /** Limits from blanks read back as concentrations; empty for fewer than two. */
  public static Optional<BlankLimits> of(double[] concentrations, double significance) {
    return Scatter.of(concentrations)
        .map(
            scatter ->
                new BlankLimits(
                    scatter.mean(),
                    scatter.deviation(),
                    scatter.count(),
                    scatter.count() - 1.0,
                    significance));
  }

  /**
   * Limits from the potentials of blanks.
   *
   * @param potentials of each blank
   * @param concentrationAt reads a potential back, by the line or the curve
   * @param significance α
   * @return empty for fewer than two
   */
  public static Optional<BlankLimits> ofPotentials(
      double[] potentials, DoubleUnaryOperator concentrationAt, double significance) {
    double[] concentrations = new double[potentials.length];
    for (int i = 0; i < potentials.length; i++) {
      concentrations[i] = concentrationAt.applyAsDouble(potentials[i]);
    }
    return of(concentrations, significance);
  }

  /** s0, the standard deviation of a net concentration of 0. */
  public double netDeviation() {
    return deviation * Math.sqrt(1 + 1.0 / blanks);
  }

  /** L_C: a net concentration above it says that the ion is there. */
  public double critical() {
    return new StudentT(degreesOfFreedom).quantile(1 - significance) * netDeviation();
  }

  /** L_D: the net concentration that is found for certain but for β = α. */
  public double detection() {
    return 2 * critical();
  }

  /** L_Q: the net concentration known to 10 %. */
  public double quantification() {
    return QUANTIFICATION_FACTOR * netDeviation();
  }

  /** Mean blank and L_C together: what a sample must read to be told from a blank. */
  public double criticalReading() {
    return mean + critical();
  }
}
