package org.restpoint.stability.fit;

import java.util.List;

/**
 * Variances and covariances of fitted parameters.
 *
 * @param size number of parameters, 1 or more
 * @param entries row by row, {@code size·size} of them, symmetric
 */
public record Covariance(int size, List<Double> entries) {

  /** Refuses a wrong number of entries; keeps a copy. */
  public Covariance {
    if (size < 1 || entries.size() != size * size) {
      throw new IllegalArgumentException(
          "a covariance of " + size + " has " + size * size + " entries");
    }
    entries = List.copyOf(entries);
  }

  /** Covariance of two parameters, counted from 0; the variance where both are the same. */
  public double of(int one, int other) {
    return entries.get(one * size + other);
  }

  /** Standard uncertainty of a parameter, counted from 0. */
  public double standardUncertainty(int parameter) {
    return Math.sqrt(of(parameter, parameter));
  }

  /** The same with every entry {@code factor} times as large. */
  public Covariance times(double factor) {
    return new Covariance(size, entries.stream().map(entry -> entry * factor).toList());
  }

  /** Variance of a quantity with these derivatives by the parameters. */
  public double propagated(double... derivatives) {
    double variance = 0;
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        variance += derivatives[i] * derivatives[j] * of(i, j);
      }
    }
    return Math.max(0, variance);
  }
}
