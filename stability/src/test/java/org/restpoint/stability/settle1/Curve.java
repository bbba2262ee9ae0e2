package org.restpoint.stability.settle1;

/**
 * The readings of one electrode after a step, one a second from t = 0, and the truth about them.
 * Invented.
 *
 * @param model the kind of electrode
 * @param step the step it answers
 * @param response how it answers, with its parameters
 * @param noise what stands between
 * @param trace the readings
 */
public record Curve(Model model, Step step, Response response, Noise noise, Trace trace) {

  /** E1: where it comes to rest, free of noise and drift, in mV. */
  public double restingMillivolts() {
    return step.restingMillivolts();
  }

  /** The drift of the resting potential, in mV/s. */
  public double driftMillivoltsPerSecond() {
    return noise.driftMillivoltsPerSecond();
  }

  /** The electrode's slope, in mV/decade. */
  public double slopeMillivoltsPerDecade() {
    return step.slopeMillivoltsPerDecade();
  }

  /**
   * What a decision is held to: the resting potential and the drift until then, {@code E1 +
   * drift·t} in mV.
   *
   * @param seconds t since the step
   */
  public double truthAt(double seconds) {
    return restingMillivolts() + driftMillivoltsPerSecond() * seconds;
  }
}
