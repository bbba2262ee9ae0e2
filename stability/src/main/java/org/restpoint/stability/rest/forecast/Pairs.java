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
    return products[pair] - sums.weight() * sums.mean(fast[pair]) * sums.mean(slow[pair]);
  }
}
