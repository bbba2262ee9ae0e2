package org.restpoint.stability.fit;

import java.util.List;

/** What came of fitting a curve. */
public sealed interface CurveFitOutcome {

  /**
   * The sum of squares has its least value here.
   *
   * @param parameters in the model's order
   * @param covariance (JᵀWJ)⁻¹, from the uncertainties of the points as they are
   * @param residuals y less the model, in the order of the points
   * @param sensitivities for each parameter its derivatives by the y of each point, (JᵀWJ)⁻¹JᵀW
   * @param consistency χ² = Σ(r/u)² with n less the number of parameters as degrees of freedom
   * @param steps steps taken
   */
  record Converged(
      List<Double> parameters,
      Covariance covariance,
      List<Double> residuals,
      List<List<Double>> sensitivities,
      Consistency consistency,
      int steps)
      implements CurveFitOutcome {

    /** Keeps copies. */
    public Converged {
      parameters = List.copyOf(parameters);
      residuals = List.copyOf(residuals);
      sensitivities = List.copyOf(sensitivities);
    }
  }

  /**
   * No least value was found.
   *
   * @param reason why
   * @param parameters where the search ended
   * @param steps steps taken
   */
  record NotConverged(Reason reason, List<Double> parameters, int steps)
      implements CurveFitOutcome {

    /** Keeps a copy. */
    public NotConverged {
      parameters = List.copyOf(parameters);
    }
  }

  /** Why a search ended without a result. */
  enum Reason {
    /** Fewer points than parameters. */
    TOO_FEW_POINTS,
    /** The model or its derivatives are not finite at the start. */
    NO_START,
    /** The points do not determine every parameter. */
    UNDETERMINED,
    /** No shorter step makes the sum of squares smaller, yet it is not at its least. */
    STALLED,
    /** The steps allowed were used up. */
    TOO_MANY_STEPS
  }
}
