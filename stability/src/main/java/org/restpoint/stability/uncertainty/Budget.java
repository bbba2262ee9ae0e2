package org.restpoint.stability.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The uncertainty of a measurand, source by source.
 *
 * <p>{@code y = f(x)}, {@code u²(y) = Σ cᵀVc} over the sources, where c holds the sensitivity
 * coefficients {@code ∂f/∂x} and V the covariance matrix of a source, {@code u²(x)} for a single
 * quantity; sources are independent of each other. The derivatives are central differences over ±
 * u(x)/1000, small enough to be those at the estimates and large enough for 8 digits. Where the
 * model ends within such a step, as a logarithm does next to 0, the step is made smaller.
 *
 * <p>Effective degrees of freedom by Welch and Satterthwaite: {@code ν = u⁴(y) / Σ(uᵢ⁴(y)/νᵢ)}.
 *
 * <p>Edge results:
 *
 * <ul>
 *   <li>nothing uncertain: u(y) = 0, all shares 0, ν infinite;
 *   <li>a model that gives no finite number at the estimates or close beside them is refused with
 *       an {@link ArithmeticException}: the caller tells the case by its name before.
 * </ul>
 *
 * <p>Reference: JCGM 100:2008, 5.1.2 (independent sources), 5.2.2 (correlated ones), G.4.1.
 *
 * @param measurand what is measured
 * @param unit its unit, a UCUM code
 * @param value y
 * @param standardUncertainty u(y), k = 1
 * @param contributions one for each source, in the order given
 */
public record Budget(
    String measurand,
    String unit,
    double value,
    double standardUncertainty,
    List<Contribution> contributions) {

  private static final double STEP = 1e-3;

  /** Step, as a share, of a quantity without uncertainty: its sensitivity is told all the same. */
  private static final double STEP_OF_EXACT = 1e-6;

  /** How much smaller a step is made when it leads out of the model, and how often. */
  private static final double SMALLER = 1e-3;

  private static final int TIMES_SMALLER = 5;

  public Budget {
    contributions = List.copyOf(contributions);
  }

  /** Works out the budget of a measurand. */
  public static Budget of(
      String measurand, String unit, List<? extends Source> sources, MeasurementModel model) {
    double[] x =
        sources.stream().flatMap(s -> s.estimates().stream()).mapToDouble(d -> d).toArray();
    double value = finite(model.measurand(x.clone()), measurand);
    List<List<Double>> sensitivities = new ArrayList<>();
    double[] variances = new double[sources.size()];
    double total = 0;
    int first = 0;
    for (int s = 0; s < variances.length; s++) {
      Source source = sources.get(s);
      int size = source.estimates().size();
      double[] c = new double[size];
      for (int i = 0; i < size; i++) {
        double deviation = Math.sqrt(source.covariance(i, i));
        c[i] = finite(derivative(model, x, first + i, deviation), measurand);
      }
      variances[s] = variance(source, c);
      total += variances[s];
      sensitivities.add(Arrays.stream(c).boxed().toList());
      first += size;
    }
    List<Contribution> contributions = new ArrayList<>();
    for (int s = 0; s < variances.length; s++) {
      contributions.add(
          new Contribution(
              sources.get(s),
              sensitivities.get(s),
              Math.sqrt(variances[s]),
              total > 0 ? 100 * variances[s] / total : 0));
    }
    return new Budget(measurand, unit, value, Math.sqrt(total), contributions);
  }

  private static double derivative(MeasurementModel model, double[] x, int i, double deviation) {
    double step =
        deviation > 0 ? deviation * STEP : STEP_OF_EXACT * (x[i] == 0 ? 1 : Math.abs(x[i]));
    double slope = slope(model, x, i, step);
    for (int times = 0; times < TIMES_SMALLER && !Double.isFinite(slope); times++) {
      step *= SMALLER;
      slope = slope(model, x, i, step);
    }
    return slope;
  }

  private static double slope(MeasurementModel model, double[] x, int i, double step) {
    double[] above = x.clone();
    double[] below = x.clone();
    above[i] += step;
    below[i] -= step;
    return (model.measurand(above) - model.measurand(below)) / (above[i] - below[i]);
  }

  /** cᵀVc; rounding may leave a hair below 0 where errors cancel. */
  private static double variance(Source source, double[] c) {
    double sum = 0;
    for (int i = 0; i < c.length; i++) {
      for (int j = 0; j < c.length; j++) {
        sum += c[i] * c[j] * source.covariance(i, j);
      }
    }
    return Math.max(0, sum);
  }

  private static double finite(double number, String measurand) {
    if (!Double.isFinite(number)) {
      throw new ArithmeticException("no finite " + measurand + " follows from these inputs");
    }
    return number;
  }

  /** One line for each source, in the order given. */
  public List<BudgetLine> lines() {
    return contributions.stream().map(BudgetLine::of).toList();
  }

  /** Expanded uncertainty U = k·u(y). */
  public double expandedUncertainty(double coverage) {
    return coverage * standardUncertainty;
  }

  /** Effective degrees of freedom; infinite where all sources' are or nothing is uncertain. */
  public double effectiveDegreesOfFreedom() {
    double sum = 0;
    for (Contribution part : contributions) {
      sum += Math.pow(part.standardUncertainty(), 4) / part.source().degreesOfFreedom();
    }
    return sum > 0 ? Math.pow(standardUncertainty, 4) / sum : Double.POSITIVE_INFINITY;
  }
}
