package org.restpoint.stability.addition;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.restpoint.stability.addition.AdditionOutcome.Answer;
import org.restpoint.stability.addition.AdditionOutcome.NoAnswer;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.preparation.Volume;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * Known addition: a volume of standard is added to the sample.
 *
 * <p>{@code c = c_s·V_s·V₀ / (V_x·[R·(V₀+V_s) − V₀])}, which is {@code c_s·V_s/[(V_x+V_s)·10^(ΔE/S)
 * − V_x]} without adjustor. c and c_s in one unit of concentration, volumes in mL, {@code V₀ = V_x
 * + V_adj} ({@link Vessel}), R as in {@link PotentialStep}.
 *
 * <p>Edge results, named:
 *
 * <ul>
 *   <li>{@code addition-no-change}: |ΔE| within twice its uncertainty; no answer;
 *   <li>{@code addition-wrong-way}: the concentration seems to fall by adding; no answer. A
 *       standard weaker than the sample does that as well and is no use;
 *   <li>{@code addition-small}: R below 2, an answer that small errors of ΔE upset.
 * </ul>
 *
 * <p>Method: law of propagation ({@link Budget}). Reference: R. P. Buck, E. Lindner, Pure Appl.
 * Chem. 66 (1994) 2527, doi 10.1351/pac199466122527 (known addition); D. Harvey, Analytical
 * Chemistry 2.1, section 11.2.
 *
 * @param sample the sample in its vessel
 * @param standard V_s
 * @param standardConcentration c_s, above zero, in the unit the result is wanted in
 */
public record KnownAddition(Vessel sample, Volume standard, Quantity standardConcentration) {

  /**
   * The concentration should at least double (Standard Methods for the Examination of Water and
   * Wastewater, 4500-NH3 E; NEMI method summary 7435, seen).
   */
  private static final double AT_LEAST_DOUBLED = 2;

  public KnownAddition {
    if (!(standardConcentration.value() > 0)) {
      throw new IllegalArgumentException("a standard holds something of the ion");
    }
  }

  /** The sample's concentration, from the potentials before and after the standard. */
  public AdditionOutcome of(PotentialStep step) {
    double logarithm = Math.log(step.ratio());
    if (Math.abs(logarithm) <= 2 * step.relativeUncertaintyOfRatio()) {
      return new NoAnswer(
          new Reason(
              "addition-no-change",
              step.seen() + ": too little to tell from none",
              "Look whether the electrode responds at all; add more, or a stronger standard."));
    }
    if (logarithm < 0) {
      return new NoAnswer(
          new Reason(
              "addition-wrong-way",
              step.seen() + ": as if the concentration had fallen",
              "Look whether the slope has the ion's sign, whether the readings were swapped, and"
                  + " whether the standard is stronger than the sample."));
    }
    List<Reason> remarks = new ArrayList<>();
    if (step.ratio() < AT_LEAST_DOUBLED) {
      remarks.add(small(step.ratio()));
    }
    return new Answer(budget(step), remarks);
  }

  static Reason small(double ratio) {
    return new Reason(
        "addition-small",
        String.format(
            Locale.ROOT, "the addition raised the concentration %.2f times, not twice", ratio),
        "Add more, or a stronger standard: the concentration should at least double.");
  }

  private Budget budget(PotentialStep step) {
    return step.budget(
        sample,
        standard.quantity(),
        standardConcentration,
        (volume, before, added, strength, ratio) ->
            strength * added * before / (volume * (ratio * (before + added) - before)));
  }
}
