package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.restpoint.acquisition.check.CheckPlan.SpikeTerms;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.instruction.Instruction.Verify;
import org.restpoint.acquisition.probe.Doorman.Admission;
import org.restpoint.stability.calibration.Reason;

/** Says which checks may be read. */
final class CheckDoor {

  /** Preserved water and extracts are kept for 28 days at most (40 CFR 136, Table II). */
  private static final Duration KEPT = Duration.ofDays(28);

  private final ProbeSettings settings;
  private final CalibrationBook calibrations;
  private final Archive archive;

  CheckDoor(ProbeSettings settings, CalibrationBook calibrations, Archive archive) {
    this.settings = settings;
    this.calibrations = calibrations;
    this.archive = archive;
  }

  /** A check other than by a standard. */
  Admission admit(Instant time, Verify verify) {
    if (verify.role() == CheckRole.BLANK) {
      return blank();
    }
    String number = verify.sample().orElseThrow();
    Optional<Result> former = archive.latestOfSample(settings.probe(), number, time.minus(KEPT));
    if (former.isEmpty()) {
      return refused(
          "sample-not-measured",
          "sample %s has no settled result of this probe in the last %d days"
              .formatted(number, KEPT.toDays()),
          "Measure the sample first, with sample=%s; look whether its number is written alike."
              .formatted(number));
    }
    Amount amount = former.get().concentration().orElseThrow();
    if (!amount.unit().equals(settings.scale().unit())
        || !amount.basis().equals(settings.scale().basis())) {
      return refused(
          "sample-not-measured",
          "the result of sample %s is in %s %s, and results are in %s %s now"
              .formatted(
                  number,
                  amount.unit(),
                  amount.basis(),
                  settings.scale().unit(),
                  settings.scale().basis()),
          "Measure the sample again first.");
    }
    return verify.role() == CheckRole.DUPLICATE
        ? read(new Check.OfDuplicate(former.get()))
        : spike(former.get());
  }

  private Admission spike(Result former) {
    Optional<SpikeTerms> spike = settings.checking().plan().spike();
    return spike.isPresent()
        ? read(new Check.OfSpike(former, spike.get()))
        : refused(
            "check-not-set",
            "the station file does not say what is added to a sample",
            "Write it under checks, like spike: { adds: 0.5 mL, of: 1000 mg/L, into: 50 mL }.");
  }

  private Admission blank() {
    boolean known =
        settings.checking().plan().blankBelow().isPresent()
            || settings.amounts().range().isPresent()
            || calibrations
                .inForce()
                .filter(inForce -> inForce.curve().lowEndMolesPerLitre() > 0)
                .isPresent();
    if (settings.scale() instanceof Scale.OfPh || !known) {
      return refused(
          "check-not-set",
          "nobody says how much a blank may hold",
          "Write it under checks, like blank: { below: 0.5 mg/L }; a pH has no blank.");
    }
    return read(new Check.OfBlank());
  }

  private static Admission read(Check check) {
    return new Admission.Read(new Purpose.OfCheck(check));
  }

  private static Admission refused(String code, String text, String remedy) {
    return new Admission.Refused(new Reason(code, text, remedy));
  }
}
