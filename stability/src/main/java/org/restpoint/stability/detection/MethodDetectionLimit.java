package org.restpoint.stability.detection;

import java.util.Optional;
import org.restpoint.stability.fit.ChiSquare;
import org.restpoint.stability.fit.StudentT;

/**
 * The method detection limit of the United States' rules for waste water.
 *
 * <p>From n ≥ 7 samples spiked at a low level: {@code MDL_S = t·s}, with Student's t of n − 1
 * degrees of freedom at 0.99. From n ≥ 7 method blanks: {@code MDL_B = max(0, mean) + t·s}. The
 * larger of the two is the limit. Since s is itself uncertain, {@code t·s} has the confidence
 * limits {@code t·s·√(ν/χ²)} with the two quantiles of χ²(ν).
 *
 * <p>Edge results: fewer than seven replicates have no limit: empty.
 *
 * <p>Reference: 40 CFR part 136, appendix B, Definition and procedure for the determination of the
 * method detection limit, revision 2 (2017); the confidence limits are in revision 1.11.
 *
 * @param replicates n, 7 or more
 * @param base 0 for spiked samples, the mean for blanks where above 0
 * @param deviation s, 0 or above, in the unit of concentration
 */
public record MethodDetectionLimit(int replicates, double base, double deviation) {

  /** The fewest replicates the rule allows. */
  public static final int FEWEST = 7;

  private static final double PROBABILITY = 0.99;

  /** Refuses too few replicates and what is below 0. */
  public MethodDetectionLimit {
    if (replicates < FEWEST || !(base >= 0) || !(deviation >= 0)) {
      throw new IllegalArgumentException(
          "a method detection limit has " + FEWEST + " replicates or more and nothing below 0");
    }
  }

  /** From samples spiked at a low level; empty for fewer than seven. */
  public static Optional<MethodDetectionLimit> ofSpiked(double[] concentrations) {
    return Scatter.of(concentrations)
        .filter(scatter -> scatter.count() >= FEWEST)
        .map(scatter -> new MethodDetectionLimit(scatter.count(), 0, scatter.deviation()));
  }

  /** From method blanks; empty for fewer than seven. */
  public static Optional<MethodDetectionLimit> ofBlanks(double[] concentrations) {
    return Scatter.of(concentrations)
        .filter(scatter -> scatter.count() >= FEWEST)
        .map(
            scatter ->
                new MethodDetectionLimit(
                    scatter.count(), Math.max(0, scatter.mean()), scatter.deviation()));
  }

  /** The limit, in the unit of concentration. */
  public double concentration() {
    return base + margin();
  }

  /** The limit at the lower end of its own interval of that level, above 0 and below 1. */
  public double lowerConfidence(double level) {
    return base + margin() * spread(0.5 * (1 + level));
  }

  /** The limit at the upper end of its own interval of that level, above 0 and below 1. */
  public double upperConfidence(double level) {
    return base + margin() * spread(0.5 * (1 - level));
  }

  private double margin() {
    return new StudentT(replicates - 1.0).quantile(PROBABILITY) * deviation;
  }

  private double spread(double probability) {
    double freedom = replicates - 1.0;
    return Math.sqrt(freedom / new ChiSquare(freedom).quantile(probability));
  }
}
