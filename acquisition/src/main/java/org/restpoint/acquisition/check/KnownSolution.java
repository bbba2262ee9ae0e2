package org.restpoint.acquisition.check;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.Verification;
import org.restpoint.stability.quality.Blank;
import org.restpoint.stability.quality.BlankLimit;
import org.restpoint.stability.quality.BufferCheck;
import org.restpoint.stability.quality.CheckStandard;
import org.restpoint.stability.quality.Measured;
import org.restpoint.stability.quality.Recovery;
import org.restpoint.stability.quality.Verdict;

/** Judges solutions of which it is known what they hold: check standards, buffers and blanks. */
public final class KnownSolution {

  private KnownSolution() {}

  /**
   * A check standard; empty where what it holds lies beyond a limit as the result says, so that
   * there is no number to compare.
   *
   * @param plan the limits
   * @param name the standard's name
   * @param expected what it holds, in the unit of the result
   * @param amount what was read
   */
  public static Optional<CheckFinding> standard(
      CheckPlan plan, String name, Measured expected, Amount amount) {
    return isBeyond(expected.value(), amount)
        ? Optional.empty()
        : Optional.of(recovered(plan, name, expected, amount));
  }

  private static boolean isBeyond(double expected, Amount amount) {
    return switch (amount.relation()) {
      case "<" -> expected <= amount.value();
      case ">" -> expected >= amount.value();
      default -> false;
    };
  }

  private static CheckFinding recovered(
      CheckPlan plan, String name, Measured expected, Amount amount) {
    Recovery recovery =
        new CheckStandard(plan.recovery()).judge(Portion.measured(amount), expected);
    double expanded = amount.coverage() * recovery.standardUncertaintyPercent();
    return finding(
        name,
        expected.value(),
        amount,
        OptionalDouble.of(recovery.percent()),
        OptionalDouble.of(expanded),
        recovery.verdict(),
        recovery.withinLimits(),
        Portion.recovered("standard " + name, recovery));
  }

  /** A buffer, as {@link #standard} in pH. */
  public static Optional<CheckFinding> buffer(
      CheckPlan plan, String name, Measured expected, Amount amount) {
    if (isBeyond(expected.value(), amount)) {
      return Optional.empty();
    }
    BufferCheck.Result result =
        new BufferCheck(plan.phWithin()).judge(Portion.measured(amount), expected);
    return Optional.of(
        finding(
            name,
            expected.value(),
            amount,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            result.verdict(),
            result.withinLimits(),
            String.format(
                Locale.ROOT,
                "buffer %s is found %+.3f ± %.3f pH (k = 2) off; accepted are ± %s pH",
                name,
                result.difference(),
                amount.coverage() * result.standardUncertainty(),
                plan.phWithin())));
  }

  private static CheckFinding finding(
      String name,
      double expected,
      Amount amount,
      OptionalDouble percent,
      OptionalDouble percentUncertainty,
      Verdict verdict,
      boolean withinLimits,
      String text) {
    List<String> flags = List.of();
    if (!withinLimits) {
      flags = List.of("check-off");
    } else if (verdict != Verdict.PASSED) {
      flags = List.of("check-uncertain");
    }
    return new CheckFinding(
        new Verification(
            CheckRole.CHECK_STANDARD,
            Optional.of(name),
            Optional.empty(),
            OptionalDouble.of(expected),
            OptionalDouble.of(amount.value() - expected),
            percent,
            percentUncertainty,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Portion.word(verdict),
            text),
        flags);
  }

  /**
   * A blank. One that is below a limit of what can be told, which lies above what a blank may hold,
   * is uncertain: it may hold more than that.
   *
   * @param limit how much it may hold, in the unit of the result, above zero
   * @param amount what was read
   */
  public static CheckFinding blank(double limit, Amount amount) {
    boolean less = amount.relation().equals("<");
    Measured found =
        amount.relation().equals("=") ? Portion.measured(amount) : Measured.exactly(amount.value());
    Blank.Result result = new Blank(new BlankLimit.Detection(limit)).judge(found);
    Verdict verdict =
        less && result.verdict() == Verdict.FAILED ? Verdict.UNCERTAIN : result.verdict();
    String text =
        String.format(
            Locale.ROOT,
            "the blank holds %s %s; accepted is up to %.4g",
            less
                ? String.format(Locale.ROOT, "less than %.4g", amount.value())
                : String.format(
                    Locale.ROOT,
                    "%.4g ± %.2g (k = 2)",
                    amount.value(),
                    amount.coverage() * found.standardUncertainty()),
            amount.unit(),
            limit);
    return new CheckFinding(
        new Verification(
            CheckRole.BLANK,
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Portion.word(verdict),
            text),
        switch (verdict) {
          case PASSED -> List.of();
          case FAILED -> List.of("blank-high");
          case UNCERTAIN, NOT_JUDGED -> List.of("blank-uncertain");
        });
  }
}
