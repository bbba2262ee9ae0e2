package org.restpoint.stability.settle1;

import java.util.List;

/**
 * A curve's readings as whole hundredths of a millivolt, which they are, with their sums: whole
 * numbers lose nothing, so a sweep decides as the rules do, which allow for rounding.
 */
final class ExactTrace {

  /** Hundredths in a millivolt. */
  static final int HUNDREDTHS = 100;

  private final Curve curve;
  private final int from;
  private final int[] hundredths;
  private final long[] sum;
  private final long[] sumByTime;
  private final long[] sumOfSquares;

  private ExactTrace(Curve curve, int from, int[] hundredths) {
    this.curve = curve;
    this.from = from;
    this.hundredths = hundredths;
    int n = hundredths.length;
    this.sum = new long[n + 1];
    this.sumByTime = new long[n + 1];
    this.sumOfSquares = new long[n + 1];
    for (int t = 0; t < n; t++) {
      long value = hundredths[t];
      sum[t + 1] = sum[t] + value;
      sumByTime[t + 1] = sumByTime[t] + t * value;
      sumOfSquares[t + 1] = sumOfSquares[t] + value * value;
    }
  }

  /** The readings of some curves as they are. */
  static List<ExactTrace> of(List<Curve> curves) {
    return curves.stream().map(curve -> new ExactTrace(curve, 0, whole(curve.trace()))).toList();
  }

  /** The medians of three of some curves, from the third second on. */
  static List<ExactTrace> mediansOfThree(List<Curve> curves) {
    return curves.stream().map(ExactTrace::medians).toList();
  }

  private static ExactTrace medians(Curve curve) {
    int[] raw = whole(curve.trace());
    int[] medians = new int[raw.length];
    for (int t = 2; t < raw.length; t++) {
      medians[t] = (int) MedianOfThree.of(raw[t - 2], raw[t - 1], raw[t]);
    }
    return new ExactTrace(curve, 2, medians);
  }

  private static int[] whole(Trace trace) {
    int[] whole = new int[trace.seconds()];
    for (int t = 0; t < whole.length; t++) {
      whole[t] = Math.toIntExact(Math.round(trace.millivoltsAt(t) * HUNDREDTHS));
    }
    return whole;
  }

  /** The curve they are of. */
  Curve curve() {
    return curve;
  }

  /** The first second that has a value. */
  int from() {
    return from;
  }

  /** The second after the last. */
  int to() {
    return hundredths.length;
  }

  /** The value of a second, in hundredths of a mV. */
  int at(int second) {
    return hundredths[second];
  }

  /** Σv over the n values up to a second, in hundredths of a mV. */
  long sum(int second, int n) {
    return sum[second + 1] - sum[second + 1 - n];
  }

  /** Σt·v over the n values up to a second. */
  long sumByTime(int second, int n) {
    return sumByTime[second + 1] - sumByTime[second + 1 - n];
  }

  /** Σv² over the n values up to a second. */
  long sumOfSquares(int second, int n) {
    return sumOfSquares[second + 1] - sumOfSquares[second + 1 - n];
  }
}
