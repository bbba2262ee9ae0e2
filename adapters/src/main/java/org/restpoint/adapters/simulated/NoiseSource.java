package org.restpoint.adapters.simulated;

import java.util.Random;

/** Makes the noise of one electrode; the same seed makes the same. For one thread. */
final class NoiseSource {

  /** So that the correlated noise does not repeat the white one. An arbitrary odd number. */
  private static final long ANOTHER = 0x9E3779B97F4A7C15L;

  private final Noise noise;
  private final Random white;
  private final Random innovations;
  private double correlated;

  NoiseSource(Noise noise, long seed) {
    this.noise = noise;
    this.white = new Random(seed);
    this.innovations = new Random(seed ^ ANOTHER);
    this.correlated = noise.correlatedMillivolts() * innovations.nextGaussian();
  }

  /** The noise of the next reading, in mV. */
  double next() {
    double made = noise.whiteMillivolts() * white.nextGaussian() + correlated;
    double phi = noise.correlation();
    correlated =
        phi * correlated
            + noise.correlatedMillivolts() * Math.sqrt(1 - phi * phi) * innovations.nextGaussian();
    return made;
  }
}
