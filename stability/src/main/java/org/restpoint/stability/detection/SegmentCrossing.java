package org.restpoint.stability.detection;

import org.jspecify.annotations.Nullable;
import org.restpoint.stability.fit.ChiSquare;
import org.restpoint.stability.fit.Consistency;
import org.restpoint.stability.fit.LineEstimate;
import org.restpoint.stability.fit.WeightedLine;

/**
 * The detection limit by the crossing of the two straight parts of a calibration.
 *
 * <p>Of the standards by rising concentration the first i make the low part (its weighted mean, or
 * a line), the last j the linear part, those between belong to the bend. With {@code y = a1 + b1·x}
 * and {@code y = a2 + b2·x}, x = log10 c, the limit is {@code x = (a1 − a2)/(b2 − b1)}, {@code
 * u²(x) = (var1(x) + var2(x))/(b2 − b1)²}, either inflated by its own Birge ratio.
 *
 * <p>Of all i ≥ 2 and j ≥ 3 (2 where only four concentrations are there) that one is taken with the
 * least {@code χ²(low) + χ²(linear) + 6.63·k}, where k counts the parameters: 1 or 2 of the low
 * part, 2 of the linear part and 1 for each standard of the bend, which fits itself. 6.63 is the 99
 * % quantile of χ²(1), our choice: a standard in the bend is off by many times its uncertainty, and
 * chance need not move the split. The low part must be less than half as steep as the linear one:
 * on the curve {@code E0 + S·log10(c + b)} it is half as steep exactly at the crossing, c = b, and
 * less so below.
 *
 * <p>Edge results: the cases of {@link DetectionLimit}; a concentration or an uncertainty not above
 * 0, or a potential not finite, is refused with an {@link IllegalArgumentException}.
 *
 * <p>Reference: R. P. Buck, E. Lindner, Recommendations for nomenclature of ion-selective
 * electrodes, Pure Appl. Chem. 66 (1994) 2527, doi 10.1351/pac199466122527 (detection limit).
 */
public final class SegmentCrossing {

  private static final int FEWEST_LOW = 2;
  private static final int FEWEST_CONCENTRATIONS = 4;
  private static final double STEEPEST_SHARE = 0.5;
  private static final double PER_PARAMETER = new ChiSquare(1).quantile(0.99);

  private final RankedStandards standards;

  private SegmentCrossing(RankedStandards standards) {
    this.standards = standards;
  }

  /**
   * Searches the standards, given in any order.
   *
   * @param concentrations above 0
   * @param potentials of each
   * @param uncertainties standard uncertainties of the potentials, above 0
   */
  public static DetectionLimit of(
      double[] concentrations, double[] potentials, double[] uncertainties) {
    RankedStandards standards = RankedStandards.of(concentrations, potentials, uncertainties);
    int different = standards.different(0, standards.count());
    if (different < FEWEST_CONCENTRATIONS) {
      return new DetectionLimit.TooFewStandards(different, FEWEST_CONCENTRATIONS);
    }
    WeightedLine all = standards.line(0, standards.count());
    if (all.consistency().consistent()) {
      return new DetectionLimit.NoLowPart(all);
    }
    Split best = new SegmentCrossing(standards).best(different > FEWEST_CONCENTRATIONS ? 3 : 2);
    return best == null ? new DetectionLimit.NotTwoParts(all) : best.crossing();
  }

  private @Nullable Split best(int fewestLinear) {
    int n = standards.count();
    Split best = null;
    for (int linear = n - 1; linear > 0; linear--) {
      if (!standards.begins(linear) || standards.different(linear, n) < fewestLinear) {
        continue;
      }
      WeightedLine line = standards.line(linear, n);
      for (int low = FEWEST_LOW; low <= linear; low++) {
        if (standards.begins(low) && standards.different(0, low) >= FEWEST_LOW) {
          Split level = split(level(low), low, linear, line, 1);
          WeightedLine through = standards.line(0, low);
          Part sloped = new Part(through.estimate(), through.consistency());
          Split split = split(sloped, low, linear, line, 2);
          split = split.score < level.score ? split : level;
          best = split.crosses() && (best == null || split.score < best.score) ? split : best;
        }
      }
    }
    return best;
  }

  private Split split(Part low, int lowCount, int linearFrom, WeightedLine linear, int parameters) {
    int bend = linearFrom - lowCount;
    double score =
        low.consistency.chiSquare()
            + linear.consistency().chiSquare()
            + (parameters + 2 + bend) * PER_PARAMETER;
    return new Split(
        low,
        lowCount,
        bend,
        linear,
        score,
        standards.log10(0),
        standards.log10(standards.count() - 1));
  }

  /** The weighted mean of the lowest standards as a line of slope 0. */
  private Part level(int count) {
    double weights = 0;
    double sum = 0;
    for (int i = 0; i < count; i++) {
      double weight = 1 / (standards.u(i) * standards.u(i));
      weights += weight;
      sum += weight * (standards.y(i) - standards.y(0));
    }
    double mean = standards.y(0) + sum / weights;
    double chiSquare = 0;
    for (int i = 0; i < count; i++) {
      double r = (standards.y(i) - mean) / standards.u(i);
      chiSquare += r * r;
    }
    return new Part(
        new LineEstimate(mean, 0, 1 / weights, 0, 0), new Consistency(chiSquare, count - 1));
  }

  private record Part(LineEstimate estimate, Consistency consistency) {

    LineEstimate inflated() {
      return estimate.inflatedBy(consistency.inflation());
    }
  }

  private record Split(
      Part low,
      int lowCount,
      int bend,
      WeightedLine linear,
      double score,
      double lowest,
      double highest) {

    double at() {
      LineEstimate upper = linear.estimate();
      LineEstimate lower = low.estimate;
      return (lower.intercept() - upper.intercept()) / (upper.slope() - lower.slope());
    }

    boolean crosses() {
      boolean flatter =
          Math.abs(low.estimate.slope()) < STEEPEST_SHARE * Math.abs(linear.estimate().slope());
      return flatter && at() > lowest && at() < highest;
    }

    DetectionLimit.Crossing crossing() {
      double x = at();
      LineEstimate lower = low.inflated();
      LineEstimate upper = linear.inflatedEstimate();
      double variance = lower.varianceAt(x) + upper.varianceAt(x);
      return new DetectionLimit.Crossing(
          x,
          Math.sqrt(variance) / Math.abs(upper.slope() - lower.slope()),
          lower,
          lowCount,
          bend,
          linear);
    }
  }
}
