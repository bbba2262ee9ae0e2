package org.restpoint.stability.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

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
    for (int i = 0; i < entries.size(); i++) {
      if (!Double.isFinite(entries.get(i)) || (i % (size + 1) == 0 && !(entries.get(i) >= 0))) {
        throw new IllegalArgumentException("a variance is a finite number, 0 or above");
      }
    }
  }

  /**
   * Of parameters that follow from independent readings.
   *
   * @param sensitivities for each parameter its derivatives by the readings
   * @param variances of the readings
   */
  public static Covariance of(List<List<Double>> sensitivities, double[] variances) {
    List<Double> entries = new ArrayList<>();
    for (List<Double> one : sensitivities) {
      for (List<Double> other : sensitivities) {
        double sum = 0;
        for (int i = 0; i < variances.length; i++) {
          sum += one.get(i) * other.get(i) * variances[i];
        }
        entries.add(sum);
      }
    }
    return new Covariance(sensitivities.size(), entries);
  }

  /** The sum of two, for errors that are independent of each other. */
  public Covariance plus(Covariance other) {
    return new Covariance(
        size,
        IntStream.range(0, entries.size())
            .mapToObj(i -> entries.get(i) + other.entries.get(i))
            .toList());
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
