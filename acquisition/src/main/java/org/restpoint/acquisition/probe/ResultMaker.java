package org.restpoint.acquisition.probe;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.check.CheckFinding;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.CalibrationUsed;
import org.restpoint.acquisition.event.Result.Interference;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.acquisition.event.Result.Reported;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.probe.ProbeMemory.InForce;
import org.restpoint.stability.calibration.ReadBack;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.calibration.RestedSample;
import org.restpoint.stability.rest.RestingPotential;
import org.restpoint.stability.uncertainty.BudgetLine;

/** Builds a result from what was read; every path to a number, or to none, goes through here. */
final class ResultMaker {

  private static final int PASS = 1;
  private static final int SUSPECT = 3;
  private static final int FAIL = 4;
  private static final int MISSING = 9;

  /**
   * Beyond these no solution lies: saturated nitrate is near 10 mol/L, and the detection limits of
   * membranes end far above 1e-12 mol/L, but that of glass, which follows hydrogen up to the
   * strongest lye, near pH 15. A potential out there is an open input or another fault.
   */
  private static final double LOWEST_LOG_ACTIVITY = -12;

  private static final double LOWEST_LOG_ACTIVITY_OF_HYDROGEN = -16;

  private static final double HIGHEST_LOG_ACTIVITY = 1.5;

  /** What a budget calls the potential. */
  private static final String POTENTIAL = "potential at rest";

  /** Keeps a difference of just as much as is let pass within it, whatever the last bits. */
  private static final double ROUNDING_KELVIN = 1e-9;

  private final ProbeSettings settings;
  private final Preparations preparations;
  private final Checks checks;

  ResultMaker(ProbeSettings settings, Archive archive) {
    this.settings = settings;
    this.preparations = new Preparations(settings, archive);
    this.checks = new Checks(settings);
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
    RestedSample sample =
        settings
            .matrix()
            .of(
                RestedSample.of(
                    rest.millivolts(),
                    rest.standardUncertaintyMillivolts(),
                    known.celsius(),
                    known.standardUncertaintyKelvin()));
    ReadBack read = calibration.curve().read(sample);
    if (!isOfASolution(read.log10ApparentActivity())) {
      return refusedAtRest(id, time, attempt, beyondAnySolution(rest.millivolts()));
    }
    Optional<Amounts.Told> told = settings.amounts().of(calibration.curve(), sample);
    if (told.isEmpty()) {
      return refusedAtRest(id, time, attempt, nothingLeft());
    }
    Amount amount = told.get().amount();
    List<Interference> interference =
        settings.matrix().interference(settings.scale(), amount, sample);
    Optional<CheckFinding> checked =
        attempt.purpose() instanceof Purpose.OfCheck of
            ? checks.of(of.check(), told.get(), calibration, sample)
            : Optional.empty();
    List<String> all = new ArrayList<>(flags);
    if (rest.creeping()) {
      all.add("creeping");
    }
    if (attempt.purpose() instanceof Purpose.OfCheck of
        && of.check() instanceof Check.OfStandard check
        && check.standard().at(known.celsius()).isEmpty()) {
      all.add("standard-temperature");
    }
    if (known.stale()) {
      all.add("temperature-stale");
    }
    if (differsInTemperature(calibration, known)) {
      all.add("temperature-differs");
    }
    all.addAll(rangeFlags(calibration, read.molesPerLitre()));
    if (!amount.relation().equals("=")) {
      all.add(amount.relation().equals("<") ? "below-range" : "above-range");
    }
    checked.map(CheckFinding::flags).ifPresent(all::addAll);
    all.addAll(settings.matrix().flags(settings.scale(), sample, interference, amount));
    Preparations.Outcome preparation = preparation(attempt, amount);
    all.addAll(preparation.flags());
    return draft(id, time, attempt)
        .outcome(Outcome.SETTLED)
        .calibration(used(calibration, time))
        .amount(amount, lines(told.get().budget(), rest.forecast()), interference)
        .verification(checked.map(CheckFinding::verification))
        .prepared(preparation.prepared())
        .judged(all.isEmpty() ? PASS : SUSPECT, all, List.of())
        .build();
  }

  private Preparations.Outcome preparation(Attempt attempt, Amount amount) {
    if (!(attempt.purpose() instanceof Purpose.OfSample of)) {
      return new Preparations.Outcome(Optional.empty(), List.of());
    }
    Optional<String> asked =
        attempt
            .instruction()
            .filter(given -> given.task() instanceof Instruction.Measure)
            .flatMap(given -> ((Instruction.Measure) given.task()).recipe());
    return preparations.of(asked, preparations.known(of.sample()), amount);
  }

  /** The same lines, of which the potential's says so where it is a forecast. */
  static List<BudgetLine> lines(List<BudgetLine> lines, boolean forecast) {
    return !forecast
        ? lines
        : lines.stream()
            .map(
                line ->
                    line.source().equals(POTENTIAL)
                        ? new BudgetLine(
                            POTENTIAL + ", foretold",
                            line.estimate(),
                            line.standardUncertainty(),
                            line.unit(),
                            line.sensitivity(),
                            line.contribution(),
                            line.sharePercent())
                        : line)
            .toList();
  }

  private boolean differsInTemperature(InForce calibration, Temperature.Known sample) {
    double difference = Math.abs(sample.celsius() - calibration.curve().referenceCelsius());
    return difference > settings.calibrate().temperatureWithinKelvin() + ROUNDING_KELVIN;
  }

  private boolean isOfASolution(double log10Activity) {
    double lowest =
        settings.scale() instanceof Scale.OfPh
            ? LOWEST_LOG_ACTIVITY_OF_HYDROGEN
            : LOWEST_LOG_ACTIVITY;
    return log10Activity >= lowest && log10Activity <= HIGHEST_LOG_ACTIVITY;
  }

  /** A wait that was given up. */
  Result unsettled(String id, Instant time, Attempt attempt) {
    boolean silent = attempt.settling().taken() == 0;
    List<Reason> reasons = whyUnsettled(attempt);
    return draft(id, time, attempt)
        .judged(silent ? MISSING : FAIL, reasons.stream().map(Reason::code).toList(), reasons)
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

  /** Why an attempt was given up, for a person, and what its readings say of the input. */
  List<Reason> whyUnsettled(Attempt attempt) {
    return Unrest.why(attempt, settings);
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

  private static Reason nothingLeft() {
    return new Reason(
        "nothing-left",
        "the interfering ions named in the station file explain all of the potential; nothing is"
            + " left of the ion",
        "Look whether their concentrations and selectivities under interferents are those of this"
            + " sample.");
  }

  /**
   * Below and above are those of the number that is told: the weakest buffer has the highest pH.
   */
  private List<String> rangeFlags(InForce calibration, double molesPerLitre) {
    boolean ph = settings.scale() instanceof Scale.OfPh;
    List<String> flags = new ArrayList<>();
    if (calibration.lowestMolesPerLitre().isPresent()
        && molesPerLitre < calibration.lowestMolesPerLitre().getAsDouble()) {
      flags.add(ph ? "above-standards" : "below-standards");
    }
    if (calibration.highestMolesPerLitre().isPresent()
        && molesPerLitre > calibration.highestMolesPerLitre().getAsDouble()) {
      flags.add(ph ? "below-standards" : "above-standards");
    }
    return flags;
  }

  CalibrationUsed used(InForce calibration, Instant time) {
    return new CalibrationUsed(
        calibration.id(),
        calibration.curve().slopeMillivoltsPerDecade(),
        calibration.curve().slopePercent(settings.analyte().charge()),
        calibration.curve().offsetMillivolts(),
        calibration.curve().referenceCelsius(),
        calibration.residualMillivolts(),
        Math.max(0, Duration.between(calibration.since(), time).toMillis() / 1e3),
        Optional.empty());
  }

  private ResultDraft draft(String id, Instant time, Attempt attempt) {
    return new ResultDraft(
            settings,
            id,
            time,
            attempt.settling().taken(),
            attempt.settling().elapsedSeconds(),
            attempt.purpose().sample())
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
