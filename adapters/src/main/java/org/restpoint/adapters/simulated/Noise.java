package org.restpoint.adapters.simulated;

/**
 * The noise of an electrode: white noise, and noise of which each reading keeps a part of the one
 * before (first-order autoregressive).
 *
 * <p>{@code c = φ · c' + σ · √(1 − φ²) · ε}, with c' the reading before, ε standard normal, and the
 * first one σ · ε, so that the standard deviation is σ from the beginning. Refuses, with an {@link
 * IllegalArgumentException}, what is outside the ranges.
 *
 * @param whiteMillivolts standard deviation of the white noise, in mV, 0 or above
 * @param correlatedMillivolts σ of the correlated noise, in mV, 0 or above
 * @param correlation φ from one reading to the next, from 0 to below 1
 */
public record Noise(double whiteMillivolts, double correlatedMillivolts, double correlation) {

  /** No noise at all. */
  public static final Noise NONE = white(0);

  public Noise {
    if (!isSize(whiteMillivolts) || !isSize(correlatedMillivolts)) {
      throw new IllegalArgumentException("the noise is 0 or above and finite");
    }
    if (!(correlation >= 0 && correlation < 1)) {
      throw new IllegalArgumentException("a correlation is from 0 to below 1: " + correlation);
    }
  }

  /** White noise alone, of a standard deviation in mV. */
  public static Noise white(double millivolts) {
    return new Noise(millivolts, 0, 0);
  }

  private static boolean isSize(double millivolts) {
    return millivolts >= 0 && millivolts < Double.POSITIVE_INFINITY;
  }
}
