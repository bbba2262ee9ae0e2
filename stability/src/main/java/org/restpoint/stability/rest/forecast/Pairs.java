package org.restpoint.stability.rest.forecast;

import java.util.Arrays;

/**
 * Two exponentials of the row in {@link Shapes}, a slow one of 10.8 to 283 s and a fast one that is
 * 4 to 14.5 times as fast: {@code E + a·e^(−t/τ₁) + b·e^(−t/τ₂)}. The sums Σw·g₁·g₂ are kept here;
 * all others that the fit needs are those of the two by themselves.
 *
 * <p>The seven distances are our choice: nearer, the two are hardly told apart; further, the fast
 * one is over before the slow one has begun.
 */
final class Pairs {

  private static final int SLOWEST = Shapes.EXPONENTIALS - 1;
  private static final int LEAST_SLOW = 24;
  private static final int[] DISTANCES = {14, 16, 18, 20, 22, 24, 27};

  static final int COUNT = count();

  private final int[] fast = new int[COUNT];
  private final int[] slow = new int[COUNT];
  private final double[] products = new double[COUNT];

  Pairs() {
    int next = 0;
    for (int distance : DISTANCES) {
      for (int i = Math.max(LEAST_SLOW, distance); i <= SLOWEST; i++) {
        fast[next] = i - distance;
        slow[next] = i;
        next++;
      }
    }
  }

  private static int count() {
    int pairs = 0;
    for (int distance : DISTANCES) {
      pairs += SLOWEST - Math.max(LEAST_SLOW, distance) + 1;
    }
    return pairs;
  }

  void clear() {
    Arrays.fill(products, 0);
  }

  void add(double weight, double[] shapes) {
    int next = 0;
    for (int distance : DISTANCES) {
      for (int i = Math.max(LEAST_SLOW, distance); i <= SLOWEST; i++) {
        products[next] += weight * shapes[i] * shapes[i - distance];
        next++;
      }
    }
  }

  int fast(int pair) {
    return fast[pair];
  }

  int slow(int pair) {
    return slow[pair];
  }

  /** Σw(g₁ − ḡ₁)(g₂ − ḡ₂). */
  double product(int pair, WeightedSums sums) {
    return products[pair] - sums.weight() * sums.means()[fast[pair]] * sums.means()[slow[pair]];
  }

  /**
   * What each pair explains of Σw(y − ȳ)²: {@code (C₂₂c₁² − 2·C₁₂c₁c₂ + C₁₁c₂²)/(C₁₁C₂₂ − C₁₂²)}.
   *
   * @param sums centred
   * @param prior what is added to C₁₁ and C₂₂
   * @param explained where it is put, from a place on
   */
  void explain(WeightedSums sums, double prior, double[] explained, int place) {
    double weight = sums.weight();
    double[] means = sums.means();
    double[] squares = sums.squares();
    double[] responses = sums.products();
    int next = 0;
    for (int distance : DISTANCES) {
      for (int i = Math.max(LEAST_SLOW, distance); i <= SLOWEST; i++) {
        double c11 = squares[i - distance] + prior;
        double c22 = squares[i] + prior;
        double c12 = products[next] - weight * means[i - distance] * means[i];
        double c1 = responses[i - distance];
        double c2 = responses[i];
        double det = determinant(c11, c22, c12, prior);
        explained[place + next] = (c22 * c1 * c1 - 2 * c12 * c1 * c2 + c11 * c2 * c2) / det;
        next++;
      }
    }
  }

  /** Not below what the prior alone gives, whatever the rounding of nearly equal exponentials. */
  static double determinant(double c11, double c22, double c12, double prior) {
    return Math.max(c11 * c22 - c12 * c12, prior * prior);
  }
}
