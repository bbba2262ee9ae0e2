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
 * Known subtraction: a reagent that takes the ion away, wholly and in a known ratio, is added to
 * the sample in less than the amount that would take all of it.
 *
 * <p>{@code c = n·c_r·V_r·V₀ / (V_x·[V₀ − R·(V₀+V_r)])}. n is the number of ions that one of the
 * reagent takes (½ where it takes two of the reagent), c_r that of the reagent in the unit of c,
 * which has to be one of amount (mol/L, mmol/L); volumes in mL, {@code V₀ = V_x + V_adj} ({@link
 * Vessel}), R as in {@link PotentialStep}. What is left is the share {@code r = R·(V₀+V_r)/V₀}.
 *
 * <p>Edge results, named:
 *
 * <ul>
 *   <li>{@code subtraction-no-change}: r within twice its uncertainty of 1; no answer;
 *   <li>{@code subtraction-wrong-way}: r above 1, nothing was taken away; no answer;
 *   <li>{@code subtraction-small}: r above ½, an answer that small errors of ΔE upset;
 *   <li>{@code subtraction-near-end}: r below 0.1. Past the end of the reaction the formula goes on
 *       giving numbers, near n·c_r·V_r/V_x, while the sample may hold less.
 * </ul>
 *
 * <p>Method: law of propagation ({@link Budget}); n is exact. Reference: IUPAC Compendium of
 * Chemical Terminology, standard subtraction method (doi 10.1351/goldbook.S05926); the formula is a
 * balance of amounts.
 *
 * @param sample the sample in its vessel
 * @param reagent V_r
 * @param reagentConcentration c_r, above zero
 * @param ionsTakenByOneOfReagent n, above zero
 */
public record KnownSubtraction(
    Vessel sample, Volume reagent, Quantity reagentConcentration, double ionsTakenByOneOfReagent) {

  /** The mirror of an addition that doubles; our choice. */
  private static final double AT_MOST_LEFT = 0.5;

  /** One decade down, where solubility and excess begin to show; our choice. */
  private static final double AT_LEAST_LEFT = 0.1;

  public KnownSubtraction {
    if (!(reagentConcentration.value() > 0)) {
      throw new IllegalArgumentException("a reagent holds something of what takes the ion");
    }
    if (!(ionsTakenByOneOfReagent > 0) || Double.isInfinite(ionsTakenByOneOfReagent)) {
      throw new IllegalArgumentException(
          "a reagent takes a number of ions above zero, not " + ionsTakenByOneOfReagent);
    }
  }

  /** The sample's concentration, from the potentials before and after the reagent. */
  public AdditionOutcome of(PotentialStep step) {
    double before = sample.totalMillilitres();
    double left = step.ratio() * (before + reagent.millilitres()) / before;
    double doubt = 2 * left * step.relativeUncertaintyOfRatio();
    if (Math.abs(1 - left) <= doubt) {
      return new NoAnswer(
          new Reason(
              "subtraction-no-change",
              step.seen() + ": too little to tell from the dilution alone",
              "Look whether the reagent reacts with the ion and the electrode responds; add more"
                  + " reagent."));
    }
    if (left > 1) {
      return new NoAnswer(
          new Reason(
              "subtraction-wrong-way",
              step.seen() + ": as if the reagent had brought more of the ion",
              "Look whether the slope has the ion's sign, whether the readings were swapped, and"
                  + " whether the reagent holds the ion itself."));
    }
    return new Answer(budget(step), remarks(left));
  }

  private static List<Reason> remarks(double left) {
    List<Reason> remarks = new ArrayList<>();
    String figure = String.format(Locale.ROOT, "%.1f %% of the ion is left", 100 * left);
    if (left > AT_MOST_LEFT) {
      remarks.add(
          new Reason(
              "subtraction-small",
              figure + ", more than half",
              "Add more reagent, or a stronger one: half of the ion should go."));
    }
    if (left < AT_LEAST_LEFT) {
      remarks.add(
          new Reason(
              "subtraction-near-end",
              figure + ": the reagent may be in excess, and the result too high",
              "Add less reagent, and compare."));
    }
    return remarks;
  }

  private Budget budget(PotentialStep step) {
    return step.budget(
        sample,
        reagent.quantity(),
        reagentConcentration,
        (volume, before, added, strength, ratio) ->
            ionsTakenByOneOfReagent
                * strength
                * added
                * before
                / (volume * (before - ratio * (before + added))));
  }
}
