package org.restpoint.stability.health;

/**
 * Chance of a standard normal value farther from 0 than z, {@code p = erfc(z/√2)}, and the z of
 * such a chance.
 *
 * <p>With {@code x = z/√2}: below 2, {@code erf x = 2/√π·e^(−x²)·Σ 2ⁿ·x^(2n+1)/(2n+1)!!}; from
 * there on, {@code erfc x = e^(−x²)/√π / (x + (1/2)/(x + 1/(x + (3/2)/(x + …))))}. The inverse by
 * bisection.
 *
 * <p>Edge results: z = 0 is 1; the z of a chance of 1 is 0.
 *
 * <p>Reference: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, NBS 1964, 7.1.6
 * and 7.1.14.
 */
final class NormalTail {

  private static final double SERIES_BELOW = 2;
  private static final int TERMS = 100;
  private static final double FARTHEST = 40;

  private NormalTail() {}

  /** Chance of |Z| ≥ z, z 0 or above. */
  static double twoSided(double z) {
    double x = z / Math.sqrt(2);
    return x < SERIES_BELOW ? 1 - series(x) : fraction(x);
  }

  private static double series(double x) {
    double term = x;
    double sum = x;
    for (int n = 1; n < TERMS; n++) {
      term *= 2 * x * x / (2 * n + 1);
      sum += term;
    }
    return 2 / Math.sqrt(Math.PI) * Math.exp(-x * x) * sum;
  }

  private static double fraction(double x) {
    double below = x;
    for (int n = TERMS; n >= 1; n--) {
      below = x + n / 2.0 / below;
    }
    return Math.exp(-x * x) / Math.sqrt(Math.PI) / below;
  }

  /** The z that |Z| exceeds with a chance above 0 to 1. */
  static double quantile(double chance) {
    double low = 0;
    double high = FARTHEST;
    for (double middle = high / 2; low < middle && middle < high; middle = (low + high) / 2) {
      if (twoSided(middle) > chance) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }
}
