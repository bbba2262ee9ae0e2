package org.restpoint.stability.addition;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.stability.addition.AdditionOutcome.Answer;
import org.restpoint.stability.addition.AdditionOutcome.NoAnswer;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.preparation.Volume;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * Analyte addition: a volume of sample is added to a standard; for samples that are scarce, thick
 * or very strong.
 *
 * <p>{@code c = c_s·V_st·[R·(V₀+V_x) − V₀] / (V₀·V_x)}, which is {@code c_s·[R·(V_st+V_x) −
 * V_st]/V_x} without adjustor. c and c_s in one unit of concentration, volumes in mL, {@code V₀ =
 * V_st + V_adj} ({@link Vessel}), R as in {@link PotentialStep}. A sample weaker than the standard
 * lets R fall below 1 and has its answer all the same.
 *
 * <p>Edge results, named:
 *
 * <ul>
 *   <li>{@code near-zero}: c within twice its uncertainty of 0, and told as it is, below zero as
 *       well;
 *   <li>{@code below-zero}: c below zero by more than that: the potential went further than by
 *       diluting with water; no answer.
 * </ul>
 *
 * <p>Method: law of propagation ({@link Budget}). Reference: D. Midgley, K. Torrance,
 * Potentiometric Water Analysis, 2nd edition, Wiley 1991 (sample added to a standard; from memory);
 * the formula is a balance of amounts.
 *
 * @param standard the standard in its vessel
 * @param standardConcentration c_s, above zero, in the unit the result is wanted in
 * @param sample V_x
 */
public record AnalyteAddition(Vessel standard, Quantity standardConcentration, Volume sample) {

  public AnalyteAddition {
    if (!(standardConcentration.value() > 0)) {
      throw new IllegalArgumentException("a standard holds something of the ion");
    }
  }

  /** The sample's concentration, from the potentials before and after the sample. */
  public AdditionOutcome of(PotentialStep step) {
    Budget budget = budget(step);
    if (budget.value() < -budget.expandedUncertainty(2)) {
      return new NoAnswer(
          new Reason(
              "below-zero",
              step.seen() + ": further than water alone would have taken it",
              "Look whether the slope has the ion's sign, whether the readings were swapped, and"
                  + " whether the sample binds the ion."));
    }
    List<Reason> remarks = new ArrayList<>();
    nearZero(budget).ifPresent(remarks::add);
    return new Answer(budget, remarks);
  }

  static Optional<Reason> nearZero(Budget budget) {
    double expanded = budget.expandedUncertainty(2);
    if (budget.value() > expanded) {
      return Optional.empty();
    }
    return Optional.of(
        new Reason(
            "near-zero",
            String.format(
                Locale.ROOT,
                "%.3g %s cannot be told from 0 (U = %.3g, k = 2)",
                budget.value(),
                budget.unit(),
                expanded),
            "Take it as less than U, or read more of the sample."));
  }

  private Budget budget(PotentialStep step) {
    List<Quantity> sources =
        Stream.of(
                standard.sources(),
                Stream.of(standardConcentration, sample.quantity()),
                step.sources())
            .flatMap(part -> part)
            .toList();
    int first = standard.size();
    return Budget.of(
        "concentration",
        standardConcentration.unit(),
        sources,
        x -> {
          double before = standard.total(x);
          double ratio = PotentialStep.ratio(x[first + 2], x[first + 3], x[first + 4]);
          double added = x[first + 1];
          return x[first] * x[0] * (ratio * (before + added) - before) / (before * added);
        });
  }
}
