package org.restpoint.adapters.simulated;

import java.util.Random;

/**
 * What faults leave to chance, apart from the electrode's own noise: so that a fault that is over
 * has changed nothing of the noise after it. The same seed gives the same. For one thread.
 */
public final class FaultChance {

  /** So that it does not repeat the electrode's noise. An arbitrary odd number. */
  private static final long ANOTHER = 0xC2B2AE3D27D4EB4FL;

  /** Some fifty readings until it has wandered elsewhere. Our choice. */
  private static final Noise WANDERING = new Noise(0, 1, 0.98);

  private final Random random;
  private final NoiseSource wandering;

  FaultChance(long seed) {
    this.random = new Random(seed ^ ANOTHER);
    this.wandering = new NoiseSource(WANDERING, seed + ANOTHER);
  }

  /** A standard normal number. */
  double gaussian() {
    return random.nextGaussian();
  }

  /** A number from 0 to below 1. */
  double uniform() {
    return random.nextDouble();
  }

  /** A number that wanders slowly, with a mean of 0 and a standard deviation of 1. */
  double wandering() {
    return wandering.next();
  }
}
