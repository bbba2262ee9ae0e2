package org.restpoint.stability.settle1;

import java.util.List;
import java.util.Locale;

/**
 * A figure over several sets of curves: its mean and its sample standard deviation.
 *
 * @param mean in the figure's unit
 * @param deviation the same; 0 for one set
 */
record Spread(double mean, double deviation) {

  static Spread of(List<Double> values) {
    double mean = values.stream().mapToDouble(v -> v).sum() / values.size();
    double squares = values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum();
    return new Spread(mean, Math.sqrt(squares / Math.max(1, values.size() - 1)));
  }

  /** {@code 242 ± 3}, with so many decimals. */
  String words(int decimals) {
    return number(mean, decimals) + " ± " + number(deviation, decimals);
  }

  /** A number with so many decimals, alike in every language. */
  static String number(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }
}
