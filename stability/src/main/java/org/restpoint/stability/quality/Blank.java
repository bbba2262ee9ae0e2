package org.restpoint.stability.quality;

import java.util.Locale;
import java.util.Optional;
import org.restpoint.stability.calibration.Reason;

/**
 * A sample of nothing, taken through the whole procedure: what is found in it came from the
 * procedure.
 *
 * <p>Found f against one limit from above, by the rule of {@link Verdict}: passed where {@code f +
 * U ≤ limit}, failed where {@code f − U > limit}, uncertain between.
 *
 * <p>Edge results: a blank in which nothing can be seen is given as 0 with the uncertainty of that
 * (or as the detection limit itself, with none), never left out.
 *
 * <p>Reference: EPA SW-846, chapter 1: a method blank holds no more than the highest of the
 * detection limit, 5 % of the regulatory limit and 5 % of the sample (the first seen quoted, the
 * rest from memory).
 *
 * @param limit how much the blank may hold
 */
public record Blank(BlankLimit limit) {

  /**
   * What a blank showed.
   *
   * @param found what was read
   * @param limit what it was held against, in the same unit
   * @param withinLimits whether the figure alone, without its uncertainty, is within the limit
   * @param verdict what it says with its uncertainty
   * @param reason why it did not pass, and what to do; empty where it passed
   */
  public record Result(
      Measured found,
      double limit,
      boolean withinLimits,
      Verdict verdict,
      Optional<Reason> reason) {}

  /** Judges one blank. */
  public Result judge(Measured found) {
    double highest = limit.concentration();
    double none = Double.NEGATIVE_INFINITY;
    Verdict verdict = Verdict.of(found.value(), found.standardUncertainty(), none, highest);
    boolean within = Verdict.within(found.value(), none, highest);
    return new Result(found, highest, within, verdict, reason(verdict, found));
  }

  private Optional<Reason> reason(Verdict verdict, Measured found) {
    String seen =
        String.format(
            Locale.ROOT,
            "the blank holds %.4g ± %.2g (k = 2); accepted is up to %s",
            found.value(),
            Verdict.COVERAGE * found.standardUncertainty(),
            limit.words());
    return switch (verdict) {
      case PASSED, NOT_JUDGED -> Optional.empty();
      case UNCERTAIN ->
          Optional.of(
              new Reason(
                  "blank-uncertain",
                  seen + ": the limit lies within the uncertainty",
                  "Read the blank again, well soaked and rinsed; near the detection limit the"
                      + " electrode needs longer."));
      case FAILED ->
          Optional.of(
              new Reason(
                  "blank-high",
                  seen,
                  "Look for the source: water, extractant, adjustor, filters, vessels, solution"
                      + " carried over by the electrode. Repeat the samples prepared with this"
                      + " blank."));
    };
  }
}
