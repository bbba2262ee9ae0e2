package org.restpoint.stability.health;

import java.util.Arrays;
import org.restpoint.stability.fit.StudentT;

/**
 * The test for a trend of y in x that asks nothing of the shape of either.
 *
 * <p>{@code S = Σ sgn(xⱼ − xᵢ)·sgn(yⱼ − yᵢ)} over all pairs. Without a trend S has the mean 0 and,
 * with groups of t alike in x and of u alike in y,
 *
 * <pre>
 * var S = [n(n−1)(2n+5) − Σt(t−1)(2t+5) − Σu(u−1)(2u+5)]/18
 *       + Σt(t−1)(t−2)·Σu(u−1)(u−2)/[9n(n−1)(n−2)] + Σt(t−1)·Σu(u−1)/[2n(n−1)]
 * </pre>
 *
 * <p>The chance p of an |S| at least as large is counted exactly up to {@link #EXACT_UP_TO} points
 * none of which are alike, from the number of orders with k inversions, {@code S = n(n−1)/2 − 2k};
 * otherwise it is that of a normal value beyond {@code z = (|S| − 1)/√var S}.
 *
 * <p>Edge results: S = 0, and all x or all y alike, give z = 0 and p = 1. The points have to be
 * independent: a figure that is read again before anything has changed is not a second one.
 *
 * <p>Reference: H. B. Mann, Econometrica 13 (1945) 245, doi 10.2307/1907187; M. G. Kendall, Rank
 * Correlation Methods, 4th ed., Griffin 1975, chapters 4 and 5; R. O. Gilbert, Statistical Methods
 * for Environmental Pollution Monitoring, Van Nostrand 1987, 16.4.
 *
 * @param points n
 * @param s S
 * @param variance var S, 0 or above
 * @param chance p, above 0 to 1, of both sides
 */
public record MannKendall(int points, long s, double variance, double chance) {

  /** Beyond, the normal value is good to 0.0025 in p and better; before, counting costs little. */
  public static final int EXACT_UP_TO = 40;

  /** The test on points in any order. */
  public static MannKendall of(double[] x, double[] y) {
    int n = x.length;
    if (n != y.length || n < 2) {
      throw new IllegalArgumentException("a trend needs two points or more, each with x and y");
    }
    long s = 0;
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        s += (long) (Math.signum(x[j] - x[i]) * Math.signum(y[j] - y[i]));
      }
    }
    double[] t = ties(x);
    double[] u = ties(y);
    if (t[0] == 0 && u[0] == 0) {
      return untied(n, s);
    }
    double m = n;
    double variance = (m * (m - 1) * (2 * m + 5) - t[2] - u[2]) / 18;
    variance += t[0] * u[0] / (2 * m * (m - 1));
    if (n > 2) {
      variance += t[1] * u[1] / (9 * m * (m - 1) * (m - 2));
    }
    return new MannKendall(n, s, variance, byNormal(s, variance));
  }

  /** The test on n points none of which are alike, from their S. */
  static MannKendall untied(int n, long s) {
    double variance = n * (n - 1.0) * (2.0 * n + 5) / 18;
    return new MannKendall(
        n, s, variance, n <= EXACT_UP_TO ? byCounting(n, s) : byNormal(s, variance));
  }

  /** The normal value that S is worth, with its sign, corrected for continuity. */
  public double z() {
    return z(s, variance);
  }

  private static double z(long s, double variance) {
    return s == 0 || !(variance > 0) ? 0 : (s - Long.signum(s)) / Math.sqrt(variance);
  }

  private static double byNormal(long s, double variance) {
    return 2 * StudentT.normal().upperTail(Math.abs(z(s, variance)));
  }

  /**
   * Twice the chance of {@code (n(n−1)/2 − |S|)/2} inversions or fewer, from that of each number.
   */
  private static double byCounting(int n, long s) {
    int most = (int) ((n * (n - 1) / 2 - Math.abs(s)) / 2);
    double[] chances = new double[most + 1];
    chances[0] = 1;
    for (int size = 2; size <= n; size++) {
      double[] next = new double[most + 1];
      double sum = 0;
      for (int k = 0; k <= most; k++) {
        sum += chances[k];
        if (k >= size) {
          sum -= chances[k - size];
        }
        next[k] = sum / size;
      }
      chances = next;
    }
    return s == 0 ? 1 : 2 * Arrays.stream(chances).sum();
  }

  /** Of the groups of t alike: Σt(t−1), Σt(t−1)(t−2), Σt(t−1)(2t+5). */
  private static double[] ties(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    double[] sums = new double[3];
    int from = 0;
    for (int i = 1; i <= sorted.length; i++) {
      if (i == sorted.length || sorted[i] != sorted[from]) {
        double t = i - from;
        sums[0] += t * (t - 1);
        sums[1] += t * (t - 1) * (t - 2);
        sums[2] += t * (t - 1) * (2 * t + 5);
        from = i;
      }
    }
    return sums;
  }
}
