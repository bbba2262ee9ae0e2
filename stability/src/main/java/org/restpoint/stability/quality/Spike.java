package org.restpoint.stability.quality;

import java.util.Locale;
import java.util.Optional;
import org.restpoint.stability.calibration.Reason;

/**
 * A known amount added to a sample: whether the sample lets it be found.
 *
 * <p>{@code R = 100·[Cs·(Vs + Va) − Cu·Vs]/(Ca·Va)} %, with Cs the spiked and Cu the unspiked
 * concentration, Vs the volume of sample, Ca and Va concentration and volume of the spike: the
 * spike's volume dilutes the sample. {@code u(R)} by first order from all five (JCGM 100:2008,
 * 5.1.2), taken as independent; two readings on one line share its error, which makes u(R) too
 * large rather than too small.
 *
 * <p>Edge results: an unspiked sample of 0 (also one below the detection limit: EPA, Inorganics
 * statement of work, 12.6.7, seen quoted) takes nothing off. A spike of less than {@code
 * leastPercentOfSample} of what the sample brought is not judged: the difference of two nearly
 * equal readings says nothing. A recovery may come out below 0 and is then told so.
 *
 * <p>Reference: EPA SW-846, method 1312, 8.2.4 (seen), {@code 100·(Xs − Xu)/K} with the spike K as
 * concentration in the sample, which is R without the dilution.
 *
 * @param limits the recoveries that are accepted
 * @param leastPercentOfSample the smallest spike that is judged, in percent of what the sample
 *     brought, 0 or above
 */
public record Spike(RecoveryLimits limits, double leastPercentOfSample) {

  /**
   * 25 %: EPA method 200.7, 9.4.3, asks for no recovery of a spike below that (from memory). More
   * is better: method 332, 9.3.7.1, adds as much as is there or more, method 1312, 8.2.2, at least
   * half of it (both seen).
   */
  public static final double LEAST_PERCENT_OF_SAMPLE = 25;

  public Spike {
    if (!(leastPercentOfSample >= 0) || Double.isInfinite(leastPercentOfSample)) {
      throw new IllegalArgumentException("the smallest spike is a share of the sample, 0 or above");
    }
  }

  /** With the usual limits. */
  public static Spike usual() {
    return new Spike(RecoveryLimits.OF_A_SPIKE, LEAST_PERCENT_OF_SAMPLE);
  }

  /** Judges one spike. */
  public Recovery judge(SpikeReadings r) {
    double vs = r.sampleVolume().value();
    double va = r.spikeVolume().value();
    double added = r.spike().value() * va;
    double found = r.spiked().value() * (vs + va) - r.unspiked().value() * vs;
    double percent = 100 * found / added;
    double uncertainty = uncertainty(r, vs, va, percent / 100);
    boolean within = limits.hold(percent);
    if (r.addedPercentOfSample() < leastPercentOfSample) {
      return new Recovery(
          percent, uncertainty, limits, within, Verdict.NOT_JUDGED, Optional.of(tooSmall(r)));
    }
    Verdict verdict = limits.verdict(percent, uncertainty);
    return new Recovery(
        percent,
        uncertainty,
        limits,
        within,
        verdict,
        reason(verdict, percent, limits.seen(percent, uncertainty)));
  }

  /** In percent: each uncertainty times the derivative of R to it, over what was added. */
  private static double uncertainty(SpikeReadings r, double vs, double va, double recovery) {
    double ca = r.spike().value();
    double ofSpiked = (vs + va) * r.spiked().standardUncertainty();
    double ofUnspiked = vs * r.unspiked().standardUncertainty();
    double ofSample =
        (r.spiked().value() - r.unspiked().value()) * r.sampleVolume().standardUncertainty();
    double ofSpike = recovery * va * r.spike().standardUncertainty();
    double ofVolume = (r.spiked().value() - recovery * ca) * r.spikeVolume().standardUncertainty();
    double readings = Math.hypot(ofSpiked, ofUnspiked);
    double volumes = Math.hypot(ofSample, ofVolume);
    return 100 * Math.hypot(Math.hypot(readings, volumes), ofSpike) / (ca * va);
  }

  private Reason tooSmall(SpikeReadings r) {
    return new Reason(
        "spike-too-small",
        String.format(
            Locale.ROOT,
            "the spike added %.0f %% of what the sample brought; at least %s %% are needed to tell"
                + " its recovery",
            r.addedPercentOfSample(),
            leastPercentOfSample),
        "Add more, best as much as the sample holds, in a small volume of a strong solution.");
  }

  private Optional<Reason> reason(Verdict verdict, double percent, String seen) {
    if (verdict == Verdict.PASSED) {
      return Optional.empty();
    }
    if (verdict == Verdict.UNCERTAIN) {
      return Optional.of(
          new Reason(
              "spike-uncertain",
              seen + ": a limit lies within the uncertainty",
              "Add a larger spike, and read spiked and unspiked sample right after each other."));
    }
    boolean low = percent < limits.lowPercent();
    return Optional.of(
        new Reason(
            low ? "spike-low" : "spike-high",
            seen,
            (low
                    ? "Something in the sample hides the ion (complexes, ionic strength, a fouled"
                        + " membrane), or less was added than said."
                    : "More was added than said, or the potential drifted between the two"
                        + " readings, or the sample changes the slope.")
                + " If a spiked standard is recovered well, measure this sample by known addition"
                + " or diluted, and report it with the recovery beside it."));
  }
}
