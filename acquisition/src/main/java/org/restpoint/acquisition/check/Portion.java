package org.restpoint.acquisition.check;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.Verification;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.quality.Duplicate;
import org.restpoint.stability.quality.Measured;
import org.restpoint.stability.quality.Recovery;
import org.restpoint.stability.quality.Verdict;
import org.restpoint.stability.uncertainty.BudgetLine;

/**
 * What was read of another portion of a sample.
 *
 * @param former the result of the sample itself; it has a concentration
 * @param amount the amount now
 * @param budget where its uncertainty comes from
 * @param calibration the id of the calibration it rests on
 * @param reportingLimit the lowest value that is told as a number, where there is one
 */
public record Portion(
    Result former,
    Amount amount,
    List<BudgetLine> budget,
    String calibration,
    OptionalDouble reportingLimit) {

  private static final String POTENTIAL = "potential at rest";

  public Portion {
    budget = List.copyOf(budget);
  }

  /** The sample's own amount. */
  Amount before() {
    return former.concentration().orElseThrow();
  }

  /** The amount now, with what of its uncertainty the two readings do not share. */
  Measured ownNow() {
    return own(amount, budget);
  }

  /** The amount before, likewise. */
  Measured ownBefore() {
    return own(before(), former.budget().orElse(List.of()));
  }

  /**
   * What two readings on one calibration do not share is how the potential came to rest; on two
   * calibrations they share the standards at most, and all of the uncertainty is taken. A limit is
   * taken as it is.
   */
  private Measured own(Amount of, List<BudgetLine> lines) {
    if (!of.relation().equals("=")) {
      return Measured.exactly(of.value());
    }
    if (former.calibration().filter(used -> used.id().equals(calibration)).isEmpty()) {
      return measured(of);
    }
    double u = 0;
    for (BudgetLine line : lines) {
      if (line.source().startsWith(POTENTIAL)) {
        u = Math.hypot(u, line.contribution());
      }
    }
    return new Measured(of.value(), u);
  }

  /** An amount and how well it is known. */
  static Measured measured(Amount amount) {
    return new Measured(amount.value(), amount.uncertainty() / amount.coverage());
  }

  /** What is told where nothing can be said. */
  CheckFinding notJudged(CheckRole role, Reason why) {
    return new CheckFinding(
        new Verification(
            role,
            Optional.empty(),
            Optional.of(former.id()),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            word(Verdict.NOT_JUDGED),
            why.text()),
        List.of(why.code()));
  }

  static Reason beyondTheRange() {
    return new Reason(
        "check-not-judged",
        "one of the two results is less or more than a limit, so there are no two numbers to"
            + " compare",
        "Choose a sample within the range, or dilute both portions alike.");
  }

  CheckFinding ofDuplicate(
      double difference,
      Optional<Duplicate.Result> relative,
      Verdict verdict,
      Optional<String> flag,
      String text) {
    return new CheckFinding(
        new Verification(
            CheckRole.DUPLICATE,
            Optional.empty(),
            Optional.of(former.id()),
            OptionalDouble.of(before().value()),
            OptionalDouble.of(difference),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            relative.map(Duplicate.Result::percent).orElse(OptionalDouble.empty()),
            expanded(relative.map(Duplicate.Result::percentUncertainty)),
            word(verdict),
            text),
        flag.stream().toList());
  }

  CheckFinding ofSpike(double expected, Recovery recovery) {
    double expanded = Verdict.COVERAGE * recovery.standardUncertaintyPercent();
    return new CheckFinding(
        new Verification(
            CheckRole.SPIKE,
            Optional.empty(),
            Optional.of(former.id()),
            OptionalDouble.of(expected),
            OptionalDouble.of(amount.value() - expected),
            OptionalDouble.of(recovery.percent()),
            OptionalDouble.of(expanded),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            word(recovery.verdict()),
            recovered("the spike", recovery)),
        recovery.reason().map(Reason::code).stream().toList());
  }

  private static OptionalDouble expanded(Optional<OptionalDouble> standard) {
    OptionalDouble u = standard.orElse(OptionalDouble.empty());
    return u.isPresent() ? OptionalDouble.of(Verdict.COVERAGE * u.getAsDouble()) : u;
  }

  static String recovered(String what, Recovery recovery) {
    return String.format(
        Locale.ROOT,
        "%s is recovered at %.1f ± %.1f %% (k = 2); accepted are %s to %s %%",
        what,
        recovery.percent(),
        Verdict.COVERAGE * recovery.standardUncertaintyPercent(),
        recovery.limits().lowPercent(),
        recovery.limits().highPercent());
  }

  static String word(Verdict verdict) {
    return verdict.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
