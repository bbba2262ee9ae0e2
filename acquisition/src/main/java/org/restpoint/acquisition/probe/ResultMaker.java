package org.restpoint.acquisition.probe;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.CalibrationUsed;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.acquisition.event.Result.Reported;
import org.restpoint.acquisition.event.Result.Verification;
import org.restpoint.acquisition.probe.ProbeMemory.InForce;
import org.restpoint.stability.calibration.ReadBack;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.calibration.RestedSample;
import org.restpoint.stability.chemistry.Concentration;
import org.restpoint.stability.rest.RestProgress;
import org.restpoint.stability.rest.RestingPotential;

/** Builds a result from what was read; every path to a number, or to none, goes through here. */
final class ResultMaker {

  /** Coverage factor of every published uncertainty (JCGM 100:2008, 6.2.1). */
  private static final int COVERAGE = 2;

  private static final int PASS = 1;
  private static final int SUSPECT = 3;
  private static final int FAIL = 4;
  private static final int MISSING = 9;

  /**
   * Beyond these no solution lies: saturated nitrate is near 10 mol/L, and the detection limits of
   * membranes end far above 1e-12 mol/L. A potential out there is an open input or another fault.
   */
  private static final double LOWEST_LOG_CONCENTRATION = -12;

  private static final double HIGHEST_LOG_CONCENTRATION = 1.5;

  /**
   * Customary limits for a continuing calibration check: a known solution is found to within 10 %.
   * Common practice of laboratories; methods set their own.
   */
  private static final double LOWEST_RECOVERY_PERCENT = 90;

  private static final double HIGHEST_RECOVERY_PERCENT = 110;

  /** Keeps a recovery of exactly a limit within it, whatever the rounding of the last bits. */
  private static final double ROUNDING_PERCENT = 1e-9;

  private final ProbeSettings settings;

  ResultMaker(ProbeSettings settings) {
    this.settings = settings;
  }

  /** A potential at rest, with the calibration and flags in force at its time. */
  Result settled(
      String id, Instant time, Attempt attempt, Optional<InForce> inForce, List<String> flags) {
    Temperature temperature = attempt.temperature();
    Optional<Reason> trouble = Plausible.troubleWith(temperature);
    if (trouble.isPresent()) {
      return refusedAtRest(id, time, attempt, trouble.get());
    }
    if (inForce.isEmpty()) {
      return refusedAtRest(id, time, attempt, notCalibrated());
    }
    Temperature.Known known = (Temperature.Known) temperature;
    RestingPotential rest = attempt.settling().potential();
    InForce calibration = inForce.get();
    ReadBack read =
        calibration
            .curve()
            .read(
                RestedSample.of(
                    rest.millivolts(),
                    rest.standardUncertaintyMillivolts(),
                    known.celsius(),
                    known.standardUncertaintyKelvin()));
    if (!(read.log10ApparentActivity() >= LOWEST_LOG_CONCENTRATION
        && read.log10ApparentActivity() <= HIGHEST_LOG_CONCENTRATION)) {
      return refusedAtRest(id, time, attempt, beyondAnySolution(rest.millivolts()));
    }
    List<String> all = new ArrayList<>(flags);
    if (rest.creeping()) {
      all.add("creeping");
    }
    if (known.stale()) {
      all.add("temperature-stale");
    }
    all.addAll(rangeFlags(calibration, read.molesPerLitre()));
    Amount amount = amount(read);
    Optional<Verification> verification = verification(attempt.purpose(), amount);
    if (verification.filter(ResultMaker::isOff).isPresent()) {
      all.add("check-off");
    }
    return draft(id, time, attempt)
        .outcome(Outcome.SETTLED)
        .calibration(used(calibration, time))
        .amount(amount)
        .verification(verification)
        .judged(all.isEmpty() ? PASS : SUSPECT, all, List.of())
        .build();
  }

  /** A wait that was given up. */
  Result unsettled(String id, Instant time, Attempt attempt) {
    boolean silent = attempt.settling().taken() == 0;
    return draft(id, time, attempt)
        .judged(
            silent ? MISSING : FAIL,
            List.of(silent ? "no-readings" : "unsettled"),
            List.of(whyUnsettled(attempt)))
        .build();
  }

  /** A reading that was not even begun. */
  Result refused(String id, Instant time, Optional<ObjectNode> sample, Reason reason) {
    return new ResultDraft(settings, id, time, 0, 0, sample)
        .outcome(Outcome.REFUSED)
        .judged(FAIL, List.of(reason.code()), List.of(reason))
        .build();
  }

  /** A result that a stream should have had and has not. */
  Result missing(String id, Instant time, Reason reason) {
    return new ResultDraft(settings, id, time, 0, 0, Optional.empty())
        .judged(MISSING, List.of(reason.code()), List.of(reason))
        .build();
  }

  /** Why an attempt was given up, for a person. */
  Reason whyUnsettled(Attempt attempt) {
    if (attempt.settling().taken() == 0) {
      return new Reason(
          "no-readings",
          "no reading came within %s".formatted(Words.span(attempt.limit())),
          "Look whether the probe is connected and switched on, and at the link's state under"
              + " health.");
    }
    RestProgress seen = attempt.settling().progress();
    String drift =
        seen.driftMillivoltsPerMinute().isPresent()
            ? ", drifting %s mV/min"
                .formatted(Words.number(seen.driftMillivoltsPerMinute().getAsDouble()))
            : "";
    String missing =
        seen.members().stream()
            .filter(member -> !member.progress().atRest())
            .map(RestProgress.Member::rule)
            .collect(Collectors.joining(", "));
    return new Reason(
        "unsettled",
        "not at rest within %s: %s, the last of them spread over %s mV%s; the rule is %s%s"
            .formatted(
                Words.span(attempt.limit()),
                seen.readings() == 1 ? "1 reading" : seen.readings() + " readings",
                Words.number(seen.spreadMillivolts()),
                drift,
                settings.rule().describe(),
                missing.isEmpty() ? "" : ", and what does not hold is " + missing),
        "Look for an air bubble under the tip, stir evenly or not at all, let the solution come to"
            + " the temperature of the standards, soak the electrode; then read again.");
  }

  static Reason notCalibrated() {
    return new Reason(
        "not-calibrated",
        "no calibration is in force",
        "Read the standards first: calibrate, once for each standard.");
  }

  private Result refusedAtRest(String id, Instant time, Attempt attempt, Reason reason) {
    return draft(id, time, attempt)
        .outcome(Outcome.REFUSED)
        .judged(FAIL, List.of(reason.code()), List.of(reason))
        .build();
  }

  private static Reason beyondAnySolution(double millivolts) {
    return new Reason(
        "out-of-range",
        "%s mV is beyond what any solution gives with this calibration"
            .formatted(Words.number(millivolts)),
        "Look whether electrode and reference are connected and stand in the solution; an open or"
            + " shorted input reads like this.");
  }

  private List<String> rangeFlags(InForce calibration, double molesPerLitre) {
    List<String> flags = new ArrayList<>();
    if (calibration.lowestMolesPerLitre().isPresent()
        && molesPerLitre < calibration.lowestMolesPerLitre().getAsDouble()) {
      flags.add("below-standards");
    }
    if (calibration.highestMolesPerLitre().isPresent()
        && molesPerLitre > calibration.highestMolesPerLitre().getAsDouble()) {
      flags.add("above-standards");
    }
    return flags;
  }

  private CalibrationUsed used(InForce calibration, Instant time) {
    return new CalibrationUsed(
        calibration.id(),
        calibration.curve().slopeMillivoltsPerDecade(),
        calibration.curve().slopePercent(settings.analyte().charge()),
        calibration.curve().offsetMillivolts(),
        calibration.curve().referenceCelsius(),
        calibration.residualMillivolts(),
        Math.max(0, Duration.between(calibration.since(), time).toMillis() / 1e3));
  }

  private Amount amount(ReadBack read) {
    Concentration concentration =
        Concentration.ofMolesPerLitre(
            read.molesPerLitre(), settings.analyte(), settings.unit(), settings.basis());
    return new Amount(
        concentration.value(),
        settings.unit().code(),
        settings.basis().code(),
        COVERAGE * read.relativeStandardUncertainty() * concentration.value(),
        COVERAGE,
        "=");
  }

  private Optional<Verification> verification(Purpose purpose, Amount amount) {
    if (!(purpose instanceof Purpose.OfCheck check)) {
      return Optional.empty();
    }
    double expected =
        Concentration.ofMolesPerLitre(
                check.standard().molesPerLitre(),
                settings.analyte(),
                settings.unit(),
                settings.basis())
            .value();
    return Optional.of(
        new Verification(
            "check-standard",
            check.standard().name(),
            expected,
            OptionalDouble.of(100 * amount.value() / expected)));
  }

  private static boolean isOff(Verification verification) {
    double recovery = verification.recoveryPercent().orElse(0);
    return recovery < LOWEST_RECOVERY_PERCENT - ROUNDING_PERCENT
        || recovery > HIGHEST_RECOVERY_PERCENT + ROUNDING_PERCENT;
  }

  private ResultDraft draft(String id, Instant time, Attempt attempt) {
    Optional<ObjectNode> sample =
        attempt.purpose() instanceof Purpose.OfSample of ? of.sample() : Optional.empty();
    return new ResultDraft(
            settings,
            id,
            time,
            attempt.settling().taken(),
            attempt.settling().elapsedSeconds(),
            sample)
        .read(attempt);
  }

  static Reported reported(Amount amount) {
    return new Reported(
        amount.value(),
        amount.unit(),
        amount.basis(),
        amount.uncertainty(),
        amount.coverage(),
        amount.relation(),
        "solution as measured");
  }
}
