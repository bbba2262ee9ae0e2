package org.restpoint.acquisition.check;

import java.util.Locale;
import java.util.Optional;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.quality.BufferCheck;
import org.restpoint.stability.quality.Duplicate;
import org.restpoint.stability.quality.Verdict;

/** Judges a duplicate: another portion of a sample, as it is. */
public final class SamePortion {

  private SamePortion() {}

  /** A duplicate in concentrations; of one that is above the range nothing can be said. */
  public static CheckFinding judge(CheckPlan plan, Portion portion) {
    if (isAbove(portion.before().relation()) || isAbove(portion.amount().relation())) {
      return portion.notJudged(CheckRole.DUPLICATE, Portion.beyondTheRange());
    }
    Duplicate.Result result =
        new Duplicate(plan.duplicatePercent(), portion.reportingLimit())
            .judge(portion.ownBefore(), portion.ownNow());
    Optional<Reason> reason = result.reason();
    if (result.verdict() == Verdict.NOT_JUDGED) {
      return portion.notJudged(CheckRole.DUPLICATE, reason.orElseThrow());
    }
    String text =
        reason
            .map(Reason::text)
            .orElseGet(
                () ->
                    String.format(
                        Locale.ROOT,
                        "the two results differ by %.4g %s, %.1f %% of their mean; accepted are up"
                            + " to %s %%",
                        result.difference(),
                        portion.amount().unit(),
                        result.percent().orElse(0),
                        plan.duplicatePercent()));
    return portion.ofDuplicate(
        portion.amount().value() - portion.before().value(),
        Optional.of(result),
        result.verdict(),
        reason.map(Reason::code),
        text);
  }

  private static boolean isAbove(String relation) {
    return relation.equals(">");
  }

  /** A duplicate in pH: the difference itself is held against the limit. */
  public static CheckFinding judgePh(CheckPlan plan, Portion portion) {
    BufferCheck.Result result =
        new BufferCheck(plan.duplicatePh()).judge(portion.ownNow(), portion.ownBefore());
    Optional<String> flag =
        switch (result.verdict()) {
          case PASSED -> Optional.empty();
          case FAILED -> Optional.of("duplicate-apart");
          case UNCERTAIN, NOT_JUDGED -> Optional.of("duplicate-uncertain");
        };
    return portion.ofDuplicate(
        result.difference(),
        Optional.empty(),
        result.verdict(),
        flag,
        String.format(
            Locale.ROOT,
            "the two results differ by %.3f ± %.3f pH (k = 2); accepted is up to %s pH",
            Math.abs(result.difference()),
            Verdict.COVERAGE * result.standardUncertainty(),
            plan.duplicatePh()));
  }
}
