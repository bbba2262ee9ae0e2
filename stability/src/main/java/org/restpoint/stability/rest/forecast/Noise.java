package org.restpoint.stability.rest.forecast;

/**
 * How far readings scatter about what was foretold of them, and how they hang together.
 *
 * <pre>
 *   r    reading − what was foretold of it              mV
 *   γ₀ = mean of r²,  γ₁ = mean of r·r′                 mV², r′ the reading before
 *   κ  = 1 + 2·(γ₁/γ₀)/(1 − φ),  1 ≤ κ ≤ (1 + φ)/(1 − φ),  φ = e^(−Δt/T)
 * </pre>
 *
 * κ is by how much the variance of a mean exceeds that of independent readings: exact for white
 * noise and an autoregression of first order with the correlation time T added together, whatever
 * their shares. T = {@value #CORRELATION_SECONDS} s is our choice: a shorter one is met with
 * caution, a longer one in part.
 *
 * <p>Means run over the last minute or 60 readings, whichever is longer, and each r is held to four
 * times the scatter, so that no single reading makes them. A little is put to them beforehand: 3
 * readings of 0.5 mV to the scatter that outliers are told by, so that the beginning of a fit is
 * not taken for a disturbance, 2 readings of 0.1 mV to γ₀.
 *
 * <p>The resolution q is the smallest step between two readings that differ; its rounding has the
 * variance q²/12 (JCGM 100:2008, F.2.2.1).
 *
 * <p>Reference: G. E. P. Box, G. M. Jenkins, Time Series Analysis, Holden-Day 1970, chapter 2.
 */
final class Noise {

  static final double CORRELATION_SECONDS = 6;

  private static final double MEMORY = 60;
  private static final double HELD_TO = 4;
  private static final double LEAST_SCALE = 0.02;

  /** Steps below are the rounding of binary numbers, in mV. */
  private static final double ROUNDING = 1e-6;

  /** No instrument for electrodes is coarser, in mV. */
  private static final double COARSEST = 1;

  private double count;
  private double square;
  private double product;
  private double before;
  private double interval;
  private double smallestStep = Double.POSITIVE_INFINITY;

  /** Forgets all but the resolution. */
  void clear() {
    count = 0;
    square = 0;
    product = 0;
    before = 0;
    interval = 0;
  }

  /** Sees the step between two readings, in mV. */
  void step(double millivolts) {
    double size = Math.abs(millivolts);
    if (size > ROUNDING) {
      smallestStep = Math.min(smallestStep, size);
    }
  }

  /** Takes how far a reading was from what was foretold, so many seconds after the one before. */
  void take(double millivolts, double seconds) {
    double most = HELD_TO * scale();
    double held = Math.max(-most, Math.min(most, millivolts));
    double memory = interval > 0 && interval < 1 ? MEMORY / interval : MEMORY;
    count = Math.min(count + 1, memory);
    square += (held * held - square) / count;
    product += (held * before - product) / count;
    interval += (seconds - interval) / count;
    before = held;
  }

  /** By how much single readings scatter, in mV. */
  double scale() {
    return Math.max(LEAST_SCALE, Math.sqrt((square * count + 3 * 0.25) / (count + 3)));
  }

  /** γ₀ in mV². */
  double variance() {
    return (square * count + 2 * 0.01) / (count + 2);
  }

  /** κ. */
  double inflation() {
    double phi = Math.exp(-Math.max(interval, 1e-3) / CORRELATION_SECONDS);
    double correlated = Math.max(0, product * count / (count + 2)) / variance();
    return Math.min(1 + 2 * correlated / (1 - phi), (1 + phi) / (1 - phi));
  }

  /** q²/12 in mV². */
  double roundingVariance() {
    return smallestStep < COARSEST ? smallestStep * smallestStep / 12 : 0;
  }
}
