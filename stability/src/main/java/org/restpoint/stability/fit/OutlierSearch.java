package org.restpoint.stability.fit;

import java.util.OptionalDouble;
import java.util.function.IntFunction;

/**
 * Looks for one point that does not belong to a line.
 *
 * <p>{@link #byScatter}: the largest externally studentized residual against Student's t with n − 3
 * degrees of freedom; needs four points; the uncertainties count only as weights. {@link
 * #byUncertainty}: the largest {@code |r|/(u·√(1−h))} against the normal distribution; the
 * uncertainties count as they are; needs three points, of which it can say only that something is
 * off. Both times n for the choice of the largest among n (Bonferroni), which errs on the safe
 * side.
 *
 * <p>Edge results: residuals that are rounding alone (10⁻¹² of the largest |y|) name nobody; two
 * residuals alike within 10⁻⁶ cannot be told apart.
 *
 * <p>Reference: R. D. Cook, S. Weisberg, Residuals and Influence in Regression, Chapman and Hall
 * 1982, 2.2.
 *
 * @param significance the probability by chance up to which a point is named, above 0 and below 1
 */
public record OutlierSearch(double significance) {

  /** One false alarm in twenty good lines: the common practice of tests. */
  public static final OutlierSearch USUAL = new OutlierSearch(0.05);

  private static final double ALIKE = 1e-6;

  /** Refuses a significance outside 0 to 1. */
  public OutlierSearch {
    if (!(significance > 0 && significance < 1)) {
      throw new IllegalArgumentException(
          "a significance is above 0 and below 1, found " + significance);
    }
  }

  /** Judges the points by their own scatter. */
  public OutlyingPoint byScatter(WeightedLine line) {
    int freedom = line.consistency().degreesOfFreedom();
    if (freedom < 2) {
      return new OutlyingPoint.TooFewPoints(line.points().size(), 4);
    }
    return judge(line, line::externallyStudentized, new StudentT(freedom - 1));
  }

  /** Judges the points by their known uncertainties. */
  public OutlyingPoint byUncertainty(WeightedLine line) {
    if (line.consistency().degreesOfFreedom() < 1) {
      return new OutlyingPoint.TooFewPoints(line.points().size(), 3);
    }
    return judge(line, i -> line.points().get(i).standardized(), StudentT.normal());
  }

  private OutlyingPoint judge(
      WeightedLine line, IntFunction<OptionalDouble> statistic, StudentT distribution) {
    if (onTheLine(line)) {
      return new OutlyingPoint.NoneFound(1);
    }
    int worst = -1;
    double largest = 0;
    double second = 0;
    for (int i = 0; i < line.points().size(); i++) {
      double size = Math.abs(statistic.apply(i).orElse(0));
      if (size > largest) {
        second = largest;
        largest = size;
        worst = i;
      } else {
        second = Math.max(second, size);
      }
    }
    double chance = Math.min(1, 2 * distribution.upperTail(largest) * line.points().size());
    if (worst < 0 || chance > significance) {
      return new OutlyingPoint.NoneFound(chance);
    }
    if (second == largest || second > largest * (1 - ALIKE)) {
      return new OutlyingPoint.NotAttributable(largest, chance);
    }
    return new OutlyingPoint.Named(worst, statistic.apply(worst).orElseThrow(), chance);
  }

  private static boolean onTheLine(WeightedLine line) {
    double largestY = 0;
    double largestResidual = 0;
    for (FittedPoint point : line.points()) {
      largestY = Math.max(largestY, Math.abs(point.y()));
      largestResidual = Math.max(largestResidual, Math.abs(point.residual()));
    }
    return largestResidual <= WeightedLine.ROUNDING * largestY;
  }
}
