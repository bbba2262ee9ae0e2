package org.restpoint.stability.quality;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.calibration.Reason;

/**
 * One sample taken through the procedure twice.
 *
 * <p>{@code d = |a − b|}; {@code RPD = 100·d/m} % with the mean {@code m = (a + b)/2}; {@code u(d)
 * = √(u²(a) + u²(b))}; {@code u(RPD) = 100/m²·√(b²·u²(a) + a²·u²(b))} %, first order.
 *
 * <p>Where both results are at least {@link #NEAR_THE_LIMIT} times the reporting limit, RPD is held
 * against its limit; where one is lower, d is held against the reporting limit, because so near to
 * it a relative difference says nothing.
 *
 * <p>Edge results: without a reporting limit, RPD is always used; two results of 0 have none and
 * are not judged then. A result below 0 is refused with an {@link IllegalArgumentException}. The
 * uncertainties to give are those that differ between the two (reading, preparation): what they
 * share, such as the calibration, cancels in the difference.
 *
 * <p>Reference: EPA, National Functional Guidelines for Inorganic Data Review, on laboratory
 * duplicates: 20 %, or the reporting limit itself below five times of it (from memory; the same two
 * rules seen quoted in public quality plans).
 *
 * @param limitPercent the largest relative percent difference accepted, above 0 to 200 %
 * @param reportingLimit the lowest concentration reported as a number, above zero, if there is one
 */
public record Duplicate(double limitPercent, OptionalDouble reportingLimit) {

  /** Usual for water and for extracts in one laboratory; duplicates of soil differ more. */
  public static final double USUAL_PERCENT = 20;

  /** Below this many times the reporting limit a result counts as near to it. */
  public static final double NEAR_THE_LIMIT = 5;

  /** Which rule was used. */
  public enum Rule {
    RELATIVE,
    ABSOLUTE
  }

  /**
   * What two results of one sample showed.
   *
   * @param difference d, in the unit of the results
   * @param differenceUncertainty u(d)
   * @param percent RPD, 0 to 200 %; empty where both results are 0
   * @param percentUncertainty u(RPD); empty where RPD is
   * @param rule which of the two was held against its limit
   * @param withinLimits whether the figure alone, without its uncertainty, is within the limit
   * @param verdict what it says with its uncertainty
   * @param reason why it did not pass, and what to do; empty where it passed
   */
  public record Result(
      double difference,
      double differenceUncertainty,
      OptionalDouble percent,
      OptionalDouble percentUncertainty,
      Rule rule,
      boolean withinLimits,
      Verdict verdict,
      Optional<Reason> reason) {}

  public Duplicate {
    if (!(limitPercent > 0) || limitPercent > 200) {
      throw new IllegalArgumentException(
          "a relative percent difference is limited to above 0 to 200 %, not " + limitPercent);
    }
    if (reportingLimit.isPresent() && !(reportingLimit.getAsDouble() > 0)) {
      throw new IllegalArgumentException("a reporting limit is above zero");
    }
  }

  /** With the usual limit of 20 %. */
  public static Duplicate usual(OptionalDouble reportingLimit) {
    return new Duplicate(USUAL_PERCENT, reportingLimit);
  }

  /** Judges two results, each 0 or above; their order does not matter. */
  public Result judge(Measured a, Measured b) {
    if (a.value() < 0 || b.value() < 0) {
      throw new IllegalArgumentException("the results of a duplicate are 0 or above");
    }
    double mean = a.value() / 2 + b.value() / 2;
    double difference = Math.abs(a.value() - b.value());
    double uncertainty = Math.hypot(a.standardUncertainty(), b.standardUncertainty());
    OptionalDouble percent = OptionalDouble.empty();
    OptionalDouble percentUncertainty = OptionalDouble.empty();
    if (mean > 0) {
      percent = OptionalDouble.of(100 * (difference / mean));
      double ofA = b.value() / mean * a.standardUncertainty();
      double ofB = a.value() / mean * b.standardUncertainty();
      percentUncertainty = OptionalDouble.of(100 * Math.hypot(ofA, ofB) / mean);
    }
    double lower = Math.min(a.value(), b.value());
    boolean near =
        reportingLimit.isPresent() && lower < NEAR_THE_LIMIT * reportingLimit.getAsDouble();
    Rule rule = near ? Rule.ABSOLUTE : Rule.RELATIVE;
    if (!near && percent.isEmpty()) {
      Reason reason =
          new Reason(
              "duplicate-zero",
              "both results are 0, so there is no relative difference",
              "Give the reporting limit, so that results near zero can be compared.");
      return new Result(
          0,
          uncertainty,
          percent,
          percentUncertainty,
          rule,
          true,
          Verdict.NOT_JUDGED,
          Optional.of(reason));
    }
    double figure = near ? difference : percent.orElseThrow();
    double spread = near ? uncertainty : percentUncertainty.orElseThrow();
    double limit = near ? reportingLimit.getAsDouble() : limitPercent;
    double none = Double.NEGATIVE_INFINITY;
    Verdict verdict = Verdict.of(figure, spread, none, limit);
    return new Result(
        difference,
        uncertainty,
        percent,
        percentUncertainty,
        rule,
        Verdict.within(figure, none, limit),
        verdict,
        reason(verdict, rule, figure, spread, limit));
  }

  private static Optional<Reason> reason(
      Verdict verdict, Rule rule, double figure, double spread, double limit) {
    if (verdict == Verdict.PASSED) {
      return Optional.empty();
    }
    double expanded = Verdict.COVERAGE * spread;
    String seen =
        rule == Rule.RELATIVE
            ? String.format(
                Locale.ROOT,
                "the two results differ by %.1f ± %.1f %% (k = 2) of their mean; accepted are up to"
                    + " %s %%",
                figure,
                expanded,
                limit)
            : String.format(
                Locale.ROOT,
                "near the reporting limit, the two results differ by %.4g ± %.2g (k = 2); accepted"
                    + " is up to the reporting limit, %.4g",
                figure,
                expanded,
                limit);
    return Optional.of(
        verdict == Verdict.FAILED
            ? new Reason(
                "duplicate-apart",
                seen,
                "Mix the sample better and take both portions again; if they stay apart, look"
                    + " whether the electrode comes to rest and whether the sample settles out.")
            : new Reason(
                "duplicate-uncertain",
                seen + ": the limit lies within the uncertainty",
                "Read both portions again, or a third one."));
  }
}
