package org.restpoint.stability.detection;

import java.util.Optional;

/** Mean and standard deviation of repeated values, in two passes. */
record Scatter(int count, double mean, double deviation) {

  /** Empty for fewer than two. */
  static Optional<Scatter> of(double[] values) {
    double sum = 0;
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("repeated values are finite, found " + value);
      }
      sum += value;
    }
    if (values.length < 2) {
      return Optional.empty();
    }
    double mean = sum / values.length;
    double squares = 0;
    for (double value : values) {
      squares += (value - mean) * (value - mean);
    }
    return Optional.of(new Scatter(values.length, mean, Math.sqrt(squares / (values.length - 1))));
  }
}
