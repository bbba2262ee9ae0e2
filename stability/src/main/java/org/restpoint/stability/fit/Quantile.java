package org.restpoint.stability.fit;

import java.util.function.DoubleUnaryOperator;

/**
 * The place where a falling tail probability reaches a given one, by Newton's steps inside a
 * bracket that is halved where a step would leave it.
 */
final class Quantile {

  /** Halving alone needs about 1100 steps over the whole range of doubles; Newton needs ten. */
  private static final int MOST_STEPS = 1200;

  private static final double RELATIVE_STEP = 4e-16;

  private Quantile() {}

  /**
   * Finds x above 0 with {@code tail(x) = probability}.
   *
   * @param tail falling from {@code tail(0) > probability} towards 0
   * @param density minus the derivative of {@code tail}
   */
  static double where(DoubleUnaryOperator tail, DoubleUnaryOperator density, double probability) {
    double low = 0;
    double high = 1;
    while (tail.applyAsDouble(high) > probability) {
      low = high;
      high *= 2;
    }
    double x = 0.5 * (low + high);
    for (int i = 0; i < MOST_STEPS; i++) {
      double excess = tail.applyAsDouble(x) - probability;
      if (excess > 0) {
        low = x;
      } else {
        high = x;
      }
      double next = x + excess / density.applyAsDouble(x);
      if (!(next > low && next < high)) {
        next = 0.5 * (low + high);
      }
      if (Math.abs(next - x) <= RELATIVE_STEP * x) {
        return next;
      }
      x = next;
    }
    return x;
  }
}
