package org.restpoint.stability.settle1;

import java.util.Random;

/** Draws from the distributions of the set; each takes one {@code nextDouble}. */
final class Draw {

  private Draw() {}

  /** U(low, high): {@code low + (high − low)·u}. */
  static double uniform(Random random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** logU(low, high), whose logarithm is uniform: {@code low·e^(u·ln(high/low))}. */
  static double logUniform(Random random, double low, double high) {
    return low * StrictMath.exp(StrictMath.log(high / low) * random.nextDouble());
  }
}
