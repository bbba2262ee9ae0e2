package org.restpoint.stability.quality;

import java.util.Optional;
import org.restpoint.stability.calibration.Reason;

/**
 * A standard of known concentration, read as if it were a sample.
 *
 * <p>{@code R = 100·f/e} %, f found and e expected; {@code u²(R) = (100·u(f)/e)² +
 * (100·f·u(e)/e²)²} (JCGM 100:2008, 5.1.2, f and e independent).
 *
 * <p>Edge results: nothing found is 0 %; an expected value that is not above zero is refused with
 * an {@link IllegalArgumentException}. A check standard made from the stock of the calibration
 * standards shares their error: f and e are then not independent, u(R) is too large, and a bad
 * stock is not seen at all.
 *
 * <p>Reference: EPA SW-846, Test Methods for Evaluating Solid Waste, chapter 1 (from memory).
 *
 * @param limits the recoveries that are accepted
 */
public record CheckStandard(RecoveryLimits limits) {

  /** With the usual limits. */
  public static CheckStandard usual() {
    return new CheckStandard(RecoveryLimits.OF_A_CHECK_STANDARD);
  }

  /**
   * Judges one reading.
   *
   * @param found what was read, 0 or above
   * @param expected what the standard is known to hold, above zero, in the same unit and basis
   */
  public Recovery judge(Measured found, Measured expected) {
    double known = expected.above0("what a check standard holds");
    double percent = 100 * found.value() / known;
    double uncertainty =
        Math.hypot(
            100 * found.standardUncertainty() / known,
            percent * expected.standardUncertainty() / known);
    Verdict verdict = limits.verdict(percent, uncertainty);
    return new Recovery(
        percent,
        uncertainty,
        limits,
        limits.hold(percent),
        verdict,
        reason(verdict, percent, limits.seen(percent, uncertainty)));
  }

  private Optional<Reason> reason(Verdict verdict, double percent, String seen) {
    if (verdict == Verdict.PASSED) {
      return Optional.empty();
    }
    if (verdict == Verdict.UNCERTAIN) {
      return Optional.of(
          new Reason(
              "check-uncertain",
              seen + ": a limit lies within the uncertainty",
              "Read the check standard again in a fresh portion; if the uncertainty stays as wide,"
                  + " calibrate with more or better known standards."));
    }
    String remedy =
        percent < limits.lowPercent()
            ? "Read a fresh portion of the check standard; if it is low again, calibrate anew and"
                + " repeat the samples read since the last check that passed. Look whether the"
                + " standard is old or was diluted by rinse water."
            : "Rinse and blot the electrode, and read a fresh portion of the check standard; if it"
                + " is high again, calibrate anew and repeat the samples read since the last check"
                + " that passed. Look whether the standard took up solution from a stronger one.";
    return Optional.of(
        new Reason(percent < limits.lowPercent() ? "check-low" : "check-high", seen, remedy));
  }
}
