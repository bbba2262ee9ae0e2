package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.probe.ProbeMemory.InForce;
import org.restpoint.config.station.Calibrate;
import org.restpoint.stability.calibration.CalibrationOutcome.SlopeBasis;
import org.restpoint.stability.calibration.Reason;

/** Says which instructions may be carried out, and what a result must carry a flag for. */
final class Doorman {

  private final ProbeSettings settings;
  private final CalibrationBook calibrations;
  private final Preparations preparations;
  private final CheckDoor checks;

  Doorman(ProbeSettings settings, CalibrationBook calibrations, Archive archive) {
    this.settings = settings;
    this.calibrations = calibrations;
    this.preparations = new Preparations(settings, archive);
    this.checks = new CheckDoor(settings, calibrations, archive);
  }

  /** What becomes of an instruction. */
  sealed interface Admission {

    /** It begins a reading. */
    record Read(Purpose purpose) implements Admission {}

    /** It is carried out at once. */
    record AtOnce() implements Admission {}

    /** It is not carried out. */
    record Refused(Reason reason) implements Admission {}
  }

  Admission admit(
      Instant time, Instruction instruction, Optional<Attempt> attempt, boolean soaking) {
    Instruction.Task task = instruction.task();
    Optional<Instruction> underway = attempt.flatMap(Attempt::instruction);
    if (task instanceof Instruction.Cancel) {
      return underway.isPresent() || soaking
          ? new Admission.AtOnce()
          : refused("nothing-to-cancel", "nothing is going on that could be cancelled", "");
    }
    if (underway.isPresent()) {
      return refused(
          "busy",
          "the probe is still carrying out %s".formatted(underway.get().task().word()),
          "Wait until it is done, or cancel it.");
    }
    if (task instanceof Instruction.Calibrate calibrate) {
      return known(time, calibrate.standard(), false);
    }
    if (task instanceof Instruction.Verify verify) {
      Admission admission =
          verify.role() == CheckRole.CHECK_STANDARD
              ? checkStandard(time, verify.standard().or(settings.checking().plan()::standard))
              : checks.admit(time, verify);
      return admission instanceof Admission.Read ? withCalibration(admission) : admission;
    }
    if (task instanceof Instruction.Measure measure) {
      Optional<Reason> trouble = preparations.trouble(measure);
      return trouble.isPresent()
          ? new Admission.Refused(trouble.get())
          : withCalibration(new Admission.Read(new Purpose.OfSample(measure.sample())));
    }
    if (task instanceof Instruction.AcceptStandard) {
      return acceptable();
    }
    if (task instanceof Instruction.Rinsed rinsed && rinsed.into().isPresent()) {
      String name = rinsed.into().get();
      return settings.standards().containsKey(name)
          ? new Admission.AtOnce()
          : unknown(name, settings.standards().keySet());
    }
    return new Admission.AtOnce();
  }

  private Admission checkStandard(Instant time, Optional<String> name) {
    return name.isPresent()
        ? known(time, name.get(), true)
        : refused(
            "check-not-set",
            "which standard it stands in was not said, and the station file names none for checks",
            "Name it, like standard=%s, or write it under checks, like check-standard: { standard: %1$s }."
                .formatted(settings.standards().keySet().stream().findFirst().orElse("NAME")));
  }

  private Admission known(Instant time, String name, boolean check) {
    Map<String, Standard> standards = check ? settings.checkStandards() : settings.standards();
    Standard standard = standards.get(name);
    if (standard == null) {
      return unknown(name, standards.keySet());
    }
    LocalDate today = LocalDate.ofInstant(time, ZoneOffset.UTC);
    if (standard.expires().isPresent() && today.isAfter(standard.expires().get())) {
      return refused(
          "standard-expired",
          "standard %s expired on %s".formatted(name, standard.expires().get()),
          "Take a fresh lot and write its lot and expiry into the station file.");
    }
    return new Admission.Read(
        check
            ? new Purpose.OfCheck(new Check.OfStandard(standard))
            : new Purpose.OfStandard(standard));
  }

  private Admission unknown(String name, Set<String> known) {
    return refused(
        "standard-unknown",
        "standard %s is not one of this probe's standards: %s"
            .formatted(name, String.join(", ", known)),
        "Name one of them, or define it in the station file and list it under calibrate.");
  }

  private Admission acceptable() {
    if (calibrations.refused().isEmpty()) {
      return refused("nothing-to-accept", "no standard stands refused", "");
    }
    return calibrations.watch().acceptable().isEmpty()
        ? refused(
            "no-line",
            "the standard refused last draws no line that could be accepted: %s"
                .formatted(calibrations.refused().get(0).text()),
            calibrations.refused().get(0).remedy())
        : new Admission.AtOnce();
  }

  private Admission withCalibration(Admission admission) {
    if (!calibrations.refused().isEmpty()) {
      Reason why = calibrations.refused().get(0);
      return refused(
          "calibration-refused",
          "the last standard was refused: %s".formatted(why.text()),
          "Read the standards again until a calibration is accepted; a sample read now would rest on"
              + " a calibration that has just been doubted. Where you know better: accept-standard,"
              + " which is flagged.");
    }
    if (calibrations.inForce().isEmpty()) {
      return new Admission.Refused(ResultMaker.notCalibrated());
    }
    return admission;
  }

  private static Admission refused(String code, String text, String remedy) {
    return new Admission.Refused(new Reason(code, text, remedy));
  }

  /** What a result settled now must carry a flag for. */
  List<String> flags(Instant time, Purpose purpose, int samplesSinceStandard) {
    List<String> flags = new ArrayList<>();
    Optional<InForce> inForce = calibrations.inForce();
    if (inForce.isEmpty()) {
      return flags;
    }
    if (!calibrations.refused().isEmpty()) {
      flags.add("calibration-doubted");
    }
    if (calibrations.watch().isOverridden(inForce.get())) {
      flags.add("standard-overridden");
    }
    if (inForce.get().slopeBasis() == SlopeBasis.IDEAL) {
      flags.add("ideal-slope");
    }
    if (isOlder(inForce.get(), settings.calibrate().validFor(), time)) {
      flags.add("calibration-old");
    }
    if (purpose instanceof Purpose.OfSample && standardDue(time, samplesSinceStandard)) {
      flags.add("standard-due");
    }
    if (purpose instanceof Purpose.OfSample && slopeDue(time)) {
      flags.add("slope-due");
    }
    return flags;
  }

  /** Whether a standard should be read before the next sample. */
  boolean standardDue(Instant time, int samplesSinceStandard) {
    Calibrate.Every every = settings.calibrate().every();
    if (every instanceof Calibrate.Every.Samples samples) {
      return samplesSinceStandard >= samples.samples();
    }
    if (every instanceof Calibrate.Every.Span span) {
      return calibrations
          .inForce()
          .map(calibration -> isOlder(calibration, span.span(), time))
          .orElse(true);
    }
    return false;
  }

  /** Whether the slope has not been checked for so long that a full calibration is due. */
  boolean slopeDue(Instant time) {
    Optional<Instant> checked = calibrations.inForce().flatMap(InForce::slopeSince);
    return settings
        .calibrate()
        .slopeEvery()
        .filter(span -> checked.map(since -> since.plus(span).isBefore(time)).orElse(true))
        .isPresent();
  }

  /**
   * Whether a calibration is older than it may be. One from later than now is taken for it: the
   * clock was put back and its age is not known.
   */
  private static boolean isOlder(InForce calibration, Duration span, Instant time) {
    return calibration.since().plus(span).isBefore(time) || calibration.since().isAfter(time);
  }
}
