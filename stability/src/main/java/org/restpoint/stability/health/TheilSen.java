package org.restpoint.stability.health;

import java.util.Arrays;
import java.util.Optional;
import org.restpoint.stability.fit.StudentT;

/**
 * A straight line that a third of the points may spoil without moving it.
 *
 * <p>{@code b = median of (yⱼ − yᵢ)/(xⱼ − xᵢ)} over the N pairs with different x; {@code a = median
 * of (y − b·x)}. The interval of b leaves k of the ordered slopes off at either end, {@code k = ⌊(N
 * − z·√var S)/2⌋}, with z of the confidence wanted and var S of {@link MannKendall}.
 *
 * <p>Edge results: all x alike have no line ({@link Optional#empty()}); where k is below 1 there
 * are too few points for the confidence wanted, and no interval.
 *
 * <p>Reference: H. Theil, Proc. Kon. Ned. Akad. Wet. A 53 (1950) 386, 521, 1397; P. K. Sen, J.
 * American Statistical Association 63 (1968) 1379, doi 10.1080/01621459.1968.10480934.
 *
 * @param slope b
 * @param intercept a
 * @param interval where b lies with the confidence wanted
 */
public record TheilSen(double slope, double intercept, Optional<Interval> interval) {

  /**
   * Where a slope lies.
   *
   * @param low the lower end
   * @param high the upper end
   */
  public record Interval(double low, double high) {}

  /**
   * Draws the line.
   *
   * @param confidence of the interval, above 0 to below 1
   */
  public static Optional<TheilSen> through(double[] x, double[] y, double confidence) {
    int n = x.length;
    double[] slopes = new double[n * (n - 1) / 2];
    int pairs = 0;
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        if (x[i] != x[j]) {
          slopes[pairs++] = (y[j] - y[i]) / (x[j] - x[i]);
        }
      }
    }
    if (pairs == 0) {
      return Optional.empty();
    }
    slopes = Arrays.copyOf(slopes, pairs);
    Arrays.sort(slopes);
    double slope = Baseline.medianOfSorted(slopes);
    double[] rests = new double[n];
    for (int i = 0; i < n; i++) {
      rests[i] = y[i] - slope * x[i];
    }
    double reach =
        StudentT.normal().coverageFactor(confidence) * Math.sqrt(MannKendall.of(x, y).variance());
    int off = (int) Math.floor((pairs - reach) / 2);
    Optional<Interval> interval =
        off < 1
            ? Optional.empty()
            : Optional.of(new Interval(slopes[off - 1], slopes[pairs - off]));
    return Optional.of(new TheilSen(slope, Baseline.median(rests), interval));
  }

  /** The line at x. */
  public double at(double x) {
    return intercept + slope * x;
  }
}
