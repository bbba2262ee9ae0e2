package org.restpoint.adapters.simulated;

import java.util.Random;

/** Makes the noise of one electrode; the same seed makes the same. For one thread. */
final class NoiseSource {

  private final Noise noise;
  private final Random random;
  private double correlated;

  NoiseSource(Noise noise, long seed) {
    this.noise = noise;
    this.random = new Random(seed);
    this.correlated = noise.correlatedMillivolts() * random.nextGaussian();
  }

  /** The noise of the next reading, in mV. */
  double next() {
    double made = noise.whiteMillivolts() * random.nextGaussian() + correlated;
    double phi = noise.correlation();
    correlated =
        phi * correlated
            + noise.correlatedMillivolts() * Math.sqrt(1 - phi * phi) * random.nextGaussian();
    return made;
  }
}
