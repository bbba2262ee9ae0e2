package org.restpoint.acquisition.probe;

import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.check.CheckFinding;
import org.restpoint.acquisition.check.CheckPlan;
import org.restpoint.acquisition.check.KnownSolution;
import org.restpoint.acquisition.check.Portion;
import org.restpoint.acquisition.check.SamePortion;
import org.restpoint.acquisition.check.SpikedPortion;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.probe.ProbeMemory.InForce;
import org.restpoint.stability.calibration.RestedSample;
import org.restpoint.stability.quality.Measured;

/** Judges what was read to check other results. */
final class Checks {

  private final ProbeSettings settings;
  private final CheckPlan plan;

  Checks(ProbeSettings settings) {
    this.settings = settings;
    this.plan = settings.checking().plan();
  }

  /**
   * What a check showed; empty where nobody knows what the solution holds, and where that lies
   * beyond a limit as the result says, so that there is no number to compare.
   */
  Optional<CheckFinding> of(
      Check check, Amounts.Told told, InForce calibration, RestedSample sample) {
    if (check instanceof Check.OfStandard of) {
      return standard(of.standard(), sample.celsius(), told.amount());
    }
    OptionalDouble lowest = settings.amounts().lowest(calibration.curve(), sample);
    if (check instanceof Check.OfBlank) {
      OptionalDouble limit = plan.blankBelow().isPresent() ? plan.blankBelow() : lowest;
      return limit.isPresent()
          ? Optional.of(KnownSolution.blank(limit.getAsDouble(), told.amount()))
          : Optional.empty();
    }
    if (check instanceof Check.OfDuplicate of) {
      Portion portion =
          new Portion(of.former(), told.amount(), told.budget(), calibration.id(), lowest);
      return Optional.of(
          isPh() ? SamePortion.judgePh(plan, portion) : SamePortion.judge(plan, portion));
    }
    Check.OfSpike of = (Check.OfSpike) check;
    return Optional.of(
        SpikedPortion.judge(
            of.spike(),
            new Portion(of.former(), told.amount(), told.budget(), calibration.id(), lowest)));
  }

  private Optional<CheckFinding> standard(Standard standard, double celsius, Amount amount) {
    Optional<Standard.Portion> portion = standard.at(celsius);
    if (portion.isEmpty()) {
      return Optional.empty();
    }
    double expected = settings.scale().of(portion.get().molesPerLitre());
    double share = portion.get().relativeUncertainty();
    return isPh()
        ? KnownSolution.buffer(
            plan, standard.name(), new Measured(expected, share / Math.log(10)), amount)
        : KnownSolution.standard(
            plan, standard.name(), new Measured(expected, expected * share), amount);
  }

  private boolean isPh() {
    return settings.scale() instanceof Scale.OfPh;
  }
}
