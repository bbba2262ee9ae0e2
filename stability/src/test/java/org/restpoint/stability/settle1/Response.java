package org.restpoint.stability.settle1;

/**
 * How an electrode comes to rest after a step, free of noise: at t = 0 it shows E0, and it tends to
 * E1.
 *
 * <p>References: W. E. Morf, E. Lindner, W. Simon, Anal. Chem. 47 (1975) 1596; E. Lindner, K. Tóth,
 * E. Pungor, Anal. Chem. 48 (1976) 1071 (from memory). The hyperbola and the two exponentials are
 * customary empirical forms.
 *
 * <p>All functions are of {@link StrictMath}: the same to the last bit on any machine.
 */
public sealed interface Response {

  /**
   * The potential in mV.
   *
   * @param step the step it answers
   * @param seconds t since the step, 0 or above
   */
  double millivoltsAt(Step step, double seconds);

  /**
   * Diffusion through the film of water at the membrane: {@code E1 + S·log10[1 − (1 −
   * a0/a1)·e^(−t/τ)]}.
   *
   * @param timeConstantSeconds τ
   */
  record Film(double timeConstantSeconds) implements Response {

    @Override
    public double millivoltsAt(Step step, double seconds) {
      double left = StrictMath.exp(-seconds / timeConstantSeconds);
      return nernst(step, left);
    }
  }

  /**
   * Diffusion within the membrane: {@code E1 + S·log10[1 − (1 − a0/a1)/(√(t/τ) + 1)]}.
   *
   * @param timeConstantSeconds τ
   */
  record Membrane(double timeConstantSeconds) implements Response {

    @Override
    public double millivoltsAt(Step step, double seconds) {
      double left = 1 / (StrictMath.sqrt(seconds / timeConstantSeconds) + 1);
      return nernst(step, left);
    }
  }

  /**
   * {@code E0 + (E1 − E0)·t/(t + k)}.
   *
   * @param halfWaySeconds k
   */
  record Hyperbola(double halfWaySeconds) implements Response {

    @Override
    public double millivoltsAt(Step step, double seconds) {
      double way = step.restingMillivolts() - step.startMillivolts();
      return step.startMillivolts() + way * seconds / (seconds + halfWaySeconds);
    }
  }

  /**
   * {@code E1 + (E0 − E1)·[(1 − f)·e^(−t/τ1) + f·e^(−t/τ2)]}.
   *
   * @param fastSeconds τ1
   * @param slowSeconds τ2
   * @param slowShare f
   */
  record TwoExponentials(double fastSeconds, double slowSeconds, double slowShare)
      implements Response {

    @Override
    public double millivoltsAt(Step step, double seconds) {
      double fast = StrictMath.exp(-seconds / fastSeconds);
      double slow = StrictMath.exp(-seconds / slowSeconds);
      double left = (1 - slowShare) * fast + slowShare * slow;
      return step.restingMillivolts() + (step.startMillivolts() - step.restingMillivolts()) * left;
    }
  }

  /** The potential of an electrode at whose surface this share of the change is still to come. */
  private static double nernst(Step step, double left) {
    double ratio = 1 - (1 - step.activityRatio()) * left;
    return step.restingMillivolts() + step.slopeMillivoltsPerDecade() * StrictMath.log10(ratio);
  }
}
