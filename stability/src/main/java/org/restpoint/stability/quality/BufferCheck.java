package org.restpoint.stability.quality;

import java.util.Locale;
import java.util.Optional;
import org.restpoint.stability.calibration.Reason;

/**
 * A buffer read as if it were a sample: is its pH found?
 *
 * <p>{@code d = found − expected}, {@code u²(d) = u²(found) + u²(expected)}; judged as {@link
 * Verdict} says between −limit and limit.
 *
 * <p>Reference: US EPA SW-846 method 9045, which asks for the value of a buffer to within 0.05 pH.
 *
 * @param limit how far it may be off, in pH, above zero
 */
public record BufferCheck(double limit) {

  private static final double METHOD_9045_PH = 0.05;

  public BufferCheck {
    if (!(limit > 0) || Double.isInfinite(limit)) {
      throw new IllegalArgumentException("a buffer may be off by more than 0 pH, not " + limit);
    }
  }

  /** Within 0.05 pH. */
  public static BufferCheck usual() {
    return new BufferCheck(METHOD_9045_PH);
  }

  /**
   * What came of it.
   *
   * @param difference found less expected, pH
   * @param standardUncertainty of the difference, k = 1
   * @param withinLimits whether the figure alone, without its uncertainty, lies within the limits
   * @param verdict what it says with its uncertainty
   * @param reason why it did not pass, and what to do; empty where it passed
   */
  public record Result(
      double difference,
      double standardUncertainty,
      boolean withinLimits,
      Verdict verdict,
      Optional<Reason> reason) {}

  /**
   * Judges one reading.
   *
   * @param found the pH read
   * @param expected the pH of the buffer at its temperature
   */
  public Result judge(Measured found, Measured expected) {
    double difference = found.value() - expected.value();
    double u = Math.hypot(found.standardUncertainty(), expected.standardUncertainty());
    Verdict verdict = Verdict.of(difference, u, -limit, limit);
    return new Result(
        difference,
        u,
        Verdict.within(difference, -limit, limit),
        verdict,
        reason(verdict, difference, u));
  }

  private Optional<Reason> reason(Verdict verdict, double difference, double u) {
    if (verdict == Verdict.PASSED) {
      return Optional.empty();
    }
    String seen =
        String.format(
            Locale.ROOT,
            "the buffer is found %+.3f ± %.3f pH (k = 2) off; accepted are ± %s",
            difference,
            Verdict.COVERAGE * u,
            limit);
    return Optional.of(
        verdict == Verdict.UNCERTAIN
            ? new Reason(
                "check-uncertain",
                seen + ": a limit lies within the uncertainty",
                "Read the buffer again in a fresh portion; if the uncertainty stays as wide,"
                    + " calibrate with more or better known buffers.")
            : new Reason(
                "buffer-off",
                seen,
                "Read a fresh portion of the buffer at a temperature of its table; if it is off"
                    + " again, calibrate anew and repeat the samples read since the last check that"
                    + " passed."));
  }
}
