package org.restpoint.stability.health;

import java.util.Arrays;

/**
 * Where values lie and how far they scatter, whatever the few that are out of the way.
 *
 * <p>Median, and {@code 1.4826·MAD} with MAD the median of the distances from it: the standard
 * deviation of normal values, 1/1.4826 being the third quartile of the standard normal
 * distribution.
 *
 * <p>Edge results: of an even number, the median is the mean of the two in the middle; where more
 * than half are alike the deviation is 0; no values have none and are refused with an {@link
 * IllegalArgumentException}.
 *
 * <p>Reference: F. R. Hampel, J. American Statistical Association 69 (1974) 383, doi
 * 10.1080/01621459.1974.10482962.
 *
 * @param points how many
 * @param median their median
 * @param deviation 1.4826·MAD, 0 or above
 */
public record Baseline(int points, double median, double deviation) {

  /** 1/Φ⁻¹(3/4), to the digits commonly printed. */
  public static final double NORMAL = 1.4826;

  /** Of some values, in any order. */
  public static Baseline of(double[] values) {
    double median = median(values);
    double[] distances = Arrays.stream(values).map(value -> Math.abs(value - median)).toArray();
    return new Baseline(values.length, median, NORMAL * median(distances));
  }

  static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return medianOfSorted(sorted);
  }

  static double medianOfSorted(double[] sorted) {
    int n = sorted.length;
    if (n == 0) {
      throw new IllegalArgumentException("no values have no median");
    }
    return n % 2 == 1 ? sorted[n / 2] : sorted[n / 2 - 1] / 2 + sorted[n / 2] / 2;
  }
}
