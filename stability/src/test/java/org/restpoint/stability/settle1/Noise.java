package org.restpoint.stability.settle1;

import java.util.Random;

/**
 * What stands between the response of an electrode and its readings.
 *
 * <pre>
 *   reading(t) = resolution·rint([E(t) + drift·t + white(t) + x(t) + spike(t)]/resolution)
 *   x(0) = σx·g     x(t) = φ·x(t − 1) + σx·√(1 − φ²)·g     g ~ N(0, 1)
 * </pre>
 *
 * σx is the standard deviation of the autocorrelated noise itself, not of what is added each
 * second, and x is as wide at t = 0 as ever after. The converter rounds last, so everything is
 * rounded. The drift sets out at t = 0.
 *
 * @param whiteMillivolts standard deviation of the white noise
 * @param autocorrelatedMillivolts σx
 * @param autocorrelation φ, from one second to the next
 * @param resolutionMillivolts step of the converter
 * @param driftMillivoltsPerHour drift of the resting potential
 */
public record Noise(
    double whiteMillivolts,
    double autocorrelatedMillivolts,
    double autocorrelation,
    double resolutionMillivolts,
    double driftMillivoltsPerHour) {

  private static final double SPIKES = 0.002;
  private static final double MOST_DRIFT = 2;
  private static final double SECONDS_PER_HOUR = 3600;

  /** Draws in the order of the components; resolution a {@code nextBoolean}, drift a Gaussian. */
  static Noise draw(Random random) {
    double white = Draw.logUniform(random, 0.02, 0.30);
    double autocorrelated = Draw.logUniform(random, 0.01, 0.20);
    double autocorrelation = Draw.uniform(random, 0.6, 0.95);
    double resolution = random.nextBoolean() ? 0.1 : 0.01;
    double drift = Math.max(-MOST_DRIFT, Math.min(MOST_DRIFT, 0.5 * random.nextGaussian()));
    return new Noise(white, autocorrelated, autocorrelation, resolution, drift);
  }

  /** The drift in mV/s. */
  public double driftMillivoltsPerSecond() {
    return driftMillivoltsPerHour / SECONDS_PER_HOUR;
  }

  /**
   * The readings of a response, one a second. For each second in turn: a Gaussian for the white
   * noise, a Gaussian for the autocorrelated, a {@code nextDouble} that is below 0.002 for a spike,
   * and for a spike a {@code nextDouble} for its size and a {@code nextBoolean} that is true when
   * it goes up.
   */
  Trace readings(Random random, Step step, Response response, int seconds) {
    double innovation =
        autocorrelatedMillivolts * StrictMath.sqrt(1 - autocorrelation * autocorrelation);
    double[] readings = new double[seconds];
    double autocorrelated = 0;
    for (int t = 0; t < seconds; t++) {
      double white = whiteMillivolts * random.nextGaussian();
      double g = random.nextGaussian();
      autocorrelated =
          t == 0 ? autocorrelatedMillivolts * g : autocorrelation * autocorrelated + innovation * g;
      double potential =
          response.millivoltsAt(step, t)
              + driftMillivoltsPerSecond() * t
              + white
              + autocorrelated
              + spike(random);
      readings[t] = resolutionMillivolts * Math.rint(potential / resolutionMillivolts);
    }
    return new Trace(readings);
  }

  private static double spike(Random random) {
    if (random.nextDouble() >= SPIKES) {
      return 0;
    }
    double size = Draw.uniform(random, 2, 10);
    return random.nextBoolean() ? size : -size;
  }
}
