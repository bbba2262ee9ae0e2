package org.restpoint.adapters.simulated;

import java.time.Duration;

/**
 * How an electrode comes to rest after a step from one solution into another.
 *
 * <p>What the membrane shows goes from the solution before, x0, to the solution now, x1, as
 *
 * <pre>x(t) = x1 − (x1 − x0) · g(t)</pre>
 *
 * with t the time since the step and g the share of the step that is still to come: 1 at first,
 * falling towards 0, never rising. Where the model is one of concentrations, x is in mol/L; where
 * it is one of potentials, x is log10 of it. {@link Membrane} joins steps that follow each other
 * before the electrode is at rest.
 *
 * <p>References: W. E. Morf, E. Lindner, W. Simon, Anal. Chem. 47 (1975) 1596 (both diffusions); E.
 * Lindner, K. Tóth, E. Pungor, Anal. Chem. 48 (1976) 1071. The hyperbola and the two exponentials
 * are customary forms without a theory behind them.
 *
 * <p>Each refuses, with an {@link IllegalArgumentException}, times that are not above 0.
 */
public sealed interface ResponseModel {

  /**
   * The share of a step that is still to come, from 1 down to 0.
   *
   * @param millis since the step, in ms, 0 or above
   */
  double left(double millis);

  /** Whether concentrations go that way, rather than potentials. */
  boolean isOfConcentrations();

  /**
   * Diffusion through the film of solution before the membrane: {@code g = e^(−t/τ)}, of
   * concentrations. Into a weaker solution it takes longer than into a stronger one.
   *
   * @param timeConstant τ, above 0
   */
  record FilmDiffusion(Duration timeConstant) implements ResponseModel {

    public FilmDiffusion {
      ResponseModel.checkTime(timeConstant);
    }

    @Override
    public double left(double millis) {
      return Math.exp(-millis / ResponseModel.millis(timeConstant));
    }

    @Override
    public boolean isOfConcentrations() {
      return true;
    }
  }

  /**
   * Diffusion within the membrane: {@code g = 1 / (√(t/τ) + 1)}, of concentrations. Quick at first
   * and never quite at rest.
   *
   * @param timeConstant τ, above 0
   */
  record MembraneDiffusion(Duration timeConstant) implements ResponseModel {

    public MembraneDiffusion {
      ResponseModel.checkTime(timeConstant);
    }

    @Override
    public double left(double millis) {
      return 1 / (Math.sqrt(millis / ResponseModel.millis(timeConstant)) + 1);
    }

    @Override
    public boolean isOfConcentrations() {
      return true;
    }
  }

  /**
   * A hyperbola: {@code g = k / (t + k)}, of potentials.
   *
   * @param half k, when half of the step is done, above 0
   */
  record Hyperbola(Duration half) implements ResponseModel {

    public Hyperbola {
      ResponseModel.checkTime(half);
    }

    @Override
    public double left(double millis) {
      double k = ResponseModel.millis(half);
      return k / (millis + k);
    }

    @Override
    public boolean isOfConcentrations() {
      return false;
    }
  }

  /**
   * A quick part and a slow one: {@code g = (1 − f) · e^(−t/τ1) + f · e^(−t/τ2)}, of potentials.
   *
   * @param quick τ1, above 0
   * @param slow τ2, longer than τ1
   * @param slowShare f, from 0 to 1
   */
  record TwoExponentials(Duration quick, Duration slow, double slowShare) implements ResponseModel {

    public TwoExponentials {
      ResponseModel.checkTime(quick);
      if (slow.compareTo(quick) <= 0) {
        throw new IllegalArgumentException("the slow time constant is longer than the quick one");
      }
      if (!(slowShare >= 0 && slowShare <= 1)) {
        throw new IllegalArgumentException("the slow share is from 0 to 1: " + slowShare);
      }
    }

    @Override
    public double left(double millis) {
      return (1 - slowShare) * Math.exp(-millis / ResponseModel.millis(quick))
          + slowShare * Math.exp(-millis / ResponseModel.millis(slow));
    }

    @Override
    public boolean isOfConcentrations() {
      return false;
    }
  }

  private static void checkTime(Duration time) {
    if (time.isNegative() || time.isZero()) {
      throw new IllegalArgumentException("the time constant is not above 0");
    }
  }

  private static double millis(Duration time) {
    return time.toNanos() / 1e6;
  }
}
