package org.restpoint.acquisition.probe;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.Verification;
import org.restpoint.stability.quality.BufferCheck;
import org.restpoint.stability.quality.CheckStandard;
import org.restpoint.stability.quality.Measured;
import org.restpoint.stability.quality.Recovery;
import org.restpoint.stability.quality.Verdict;

/** Compares a known solution that was read as if it were a sample with what it holds. */
final class Checks {

  private static final String ROLE = "check-standard";

  private Checks() {}

  /**
   * What was found of it.
   *
   * @param verification as it is told
   * @param withinLimits whether the figure alone lies within the limits
   */
  record Check(Verification verification, boolean withinLimits) {

    /** Whether it passed with its uncertainty. */
    boolean passed() {
      return verification.verdict().equals(word(Verdict.PASSED));
    }
  }

  /**
   * The check; empty where nobody knows what the standard holds at that temperature, and where what
   * it holds lies beyond a limit as the result says, so that there is no number to compare.
   */
  static Optional<Check> of(Standard standard, double celsius, Scale scale, Amount amount) {
    return standard
        .at(celsius)
        .filter(portion -> !isBeyond(scale.of(portion.molesPerLitre()), amount))
        .map(portion -> check(standard.name(), portion, scale, amount));
  }

  private static boolean isBeyond(double expected, Amount amount) {
    return switch (amount.relation()) {
      case "<" -> expected <= amount.value();
      case ">" -> expected >= amount.value();
      default -> false;
    };
  }

  private static Check check(String name, Standard.Portion portion, Scale scale, Amount amount) {
    double expected = scale.of(portion.molesPerLitre());
    Measured found = new Measured(amount.value(), amount.uncertainty() / amount.coverage());
    if (scale instanceof Scale.OfPh) {
      double u = portion.relativeUncertainty() / Math.log(10);
      BufferCheck.Result result = BufferCheck.usual().judge(found, new Measured(expected, u));
      return new Check(
          new Verification(
              ROLE,
              name,
              expected,
              result.difference(),
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              word(result.verdict())),
          result.withinLimits());
    }
    Recovery recovery =
        CheckStandard.usual()
            .judge(found, new Measured(expected, expected * portion.relativeUncertainty()));
    return new Check(
        new Verification(
            ROLE,
            name,
            expected,
            amount.value() - expected,
            OptionalDouble.of(recovery.percent()),
            OptionalDouble.of(amount.coverage() * recovery.standardUncertaintyPercent()),
            word(recovery.verdict())),
        recovery.withinLimits());
  }

  private static String word(Verdict verdict) {
    return verdict.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
