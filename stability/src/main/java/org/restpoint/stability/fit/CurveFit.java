package org.restpoint.stability.fit;

import java.util.Arrays;
import java.util.Optional;

/**
 * Nonlinear weighted least squares by Levenberg and Marquardt's method.
 *
 * <p>Minimises {@code χ²(p) = Σ((y − f(p))/u)²}. Each step solves {@code min |J·δ − r|² + μ·|D·δ|²}
 * orthogonally, J and r divided by u, D the largest length each column of J has had; μ falls
 * tenfold after a step that makes χ² smaller and rises tenfold before another try. Converged when
 * the undamped step is below 10⁻⁹ of each parameter's standard uncertainty or 10⁻¹³ of its value;
 * where rounding keeps χ² from falling any more, below 10⁻⁴ of the uncertainty.
 *
 * <p>Edge results: see {@link CurveFitOutcome.Reason}; as many points as parameters converge with
 * no degree of freedom; columns of unequal length, an uncertainty not above 0 or a y not finite is
 * refused with an {@link IllegalArgumentException}.
 *
 * <p>Reference: K. Levenberg, Quart. Appl. Math. 2 (1944) 164, doi 10.1090/qam/10666; D. W.
 * Marquardt, J. SIAM 11 (1963) 431, doi 10.1137/0111030; J. J. Moré, Lect. Notes Math. 630 (1978)
 * 105, doi 10.1007/BFb0067700.
 *
 * @param mostSteps steps before giving up, 1 or more
 */
public record CurveFit(int mostSteps) {

  /** Ten times what the published problems in the tests take. */
  public static final CurveFit USUAL = new CurveFit(500);

  private static final double FIRST_DAMPING = 1e-3;
  private static final double LEAST_DAMPING = 1e-15;
  private static final double MOST_DAMPING = 1e15;
  private static final double TENFOLD = 10;
  private static final double SMALL_IN_UNCERTAINTIES = 1e-9;
  private static final double SMALL_IN_VALUES = 1e-13;
  private static final double SMALL_WHEN_STALLED = 1e-4;

  /** Refuses less than one step. */
  public CurveFit {
    if (mostSteps < 1) {
      throw new IllegalArgumentException("a fit takes 1 step or more, found " + mostSteps);
    }
  }

  /** Fits the model to {@code y} with standard uncertainties {@code u}, beginning at a start. */
  public CurveFitOutcome fit(CurveModel model, double[] y, double[] u, double... start) {
    Observations.require(1, y, y, u);
    double[] p = start.clone();
    if (y.length < p.length) {
      return failed(CurveFitOutcome.Reason.TOO_FEW_POINTS, p, 0);
    }
    WeightedProblem problem = new WeightedProblem(model, y, u);
    double[] r = problem.residuals(p);
    double square = WeightedProblem.square(r);
    double[] longest = new double[p.length];
    double damping = FIRST_DAMPING;
    for (int step = 0; step < mostSteps; step++) {
      double[][] j = problem.jacobian(p);
      double[] lengths = Orthogonal.lengths(j);
      if (!Double.isFinite(square + Arrays.stream(lengths).sum())) {
        return failed(CurveFitOutcome.Reason.NO_START, p, step);
      }
      for (int k = 0; k < p.length; k++) {
        longest[k] = Math.max(longest[k], lengths[k]);
      }
      Optional<Orthogonal> undamped = Orthogonal.of(j);
      if (undamped.isPresent() && small(undamped.get(), r, p, SMALL_IN_UNCERTAINTIES)) {
        return problem.converged(p, undamped.get(), step);
      }
      boolean better = false;
      while (!better && damping <= MOST_DAMPING) {
        double[] next = damped(j, r, p, longest, damping);
        double[] nextResiduals = problem.residuals(next);
        double nextSquare = WeightedProblem.square(nextResiduals);
        better = nextSquare < square;
        if (better) {
          p = next;
          r = nextResiduals;
          square = nextSquare;
          damping = Math.max(LEAST_DAMPING, damping / TENFOLD);
        } else {
          damping *= TENFOLD;
        }
      }
      if (!better) {
        if (undamped.isEmpty()) {
          return failed(CurveFitOutcome.Reason.UNDETERMINED, p, step);
        }
        return small(undamped.get(), r, p, SMALL_WHEN_STALLED)
            ? problem.converged(p, undamped.get(), step)
            : failed(CurveFitOutcome.Reason.STALLED, p, step);
      }
    }
    return failed(CurveFitOutcome.Reason.TOO_MANY_STEPS, p, mostSteps);
  }

  private static CurveFitOutcome failed(CurveFitOutcome.Reason reason, double[] p, int steps) {
    return new CurveFitOutcome.NotConverged(reason, Arrays.stream(p).boxed().toList(), steps);
  }

  private static boolean small(Orthogonal j, double[] r, double[] p, double inUncertainties) {
    double[] step = j.solve(r);
    double[][] inverse = j.inverse();
    for (int k = 0; k < p.length; k++) {
      double uncertainty = Math.sqrt(WeightedProblem.square(inverse[k]));
      double allowed = Math.max(inUncertainties * uncertainty, SMALL_IN_VALUES * Math.abs(p[k]));
      if (!(Math.abs(step[k]) <= allowed)) {
        return false;
      }
    }
    return true;
  }

  private static double[] damped(
      double[][] j, double[] r, double[] p, double[] longest, double damping) {
    int n = r.length;
    double[][] rows = Arrays.copyOf(j, n + p.length);
    for (int k = 0; k < p.length; k++) {
      rows[n + k] = new double[p.length];
      rows[n + k][k] = Math.sqrt(damping) * (longest[k] > 0 ? longest[k] : 1);
    }
    double[] next = p.clone();
    Optional<Orthogonal> solved = Orthogonal.of(rows);
    if (solved.isPresent()) {
      double[] step = solved.get().solve(Arrays.copyOf(r, rows.length));
      for (int k = 0; k < p.length; k++) {
        next[k] += step[k];
      }
    }
    return next;
  }
}
