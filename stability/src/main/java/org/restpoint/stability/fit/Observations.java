package org.restpoint.stability.fit;

/** Checks and weighted means of the columns that go into a fit. */
final class Observations {

  private Observations() {}

  /** Refuses columns of unequal length, too few points, and what no fit can use. */
  static void require(int atLeast, double[] x, double[] y, double[] u) {
    if (x.length != y.length || x.length != u.length || x.length < atLeast) {
      throw new IllegalArgumentException(
          "a fit needs "
              + atLeast
              + " points or more, each with x, y and u, found "
              + x.length
              + ", "
              + y.length
              + " and "
              + u.length);
    }
    for (int i = 0; i < x.length; i++) {
      if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
        throw new IllegalArgumentException(
            "nothing is fitted through point " + (i + 1) + " at (" + x[i] + ", " + y[i] + ")");
      }
      if (!(u[i] > 0) || Double.isInfinite(u[i])) {
        throw new IllegalArgumentException(
            "the standard uncertainty of point "
                + (i + 1)
                + " is above 0 and finite, found "
                + u[i]);
      }
    }
  }

  static double smallest(double[] values) {
    double smallest = Double.POSITIVE_INFINITY;
    for (double value : values) {
      smallest = Math.min(smallest, value);
    }
    return smallest;
  }

  static double sum(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum;
  }

  /** The weighted mean, with the rounding of the first pass put right in a second one. */
  static double mean(double[] values, double[] weights, double sumWeights) {
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      sum += weights[i] * values[i];
    }
    double mean = sum / sumWeights;
    double correction = 0;
    for (int i = 0; i < values.length; i++) {
      correction += weights[i] * (values[i] - mean);
    }
    return mean + correction / sumWeights;
  }
}
