package org.restpoint.acquisition.probe;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.restpoint.acquisition.check.Checkbook;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.acquisition.sample.Merged;
import org.restpoint.acquisition.sample.SampleLabel;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.calibration.StandardPoint;
import org.restpoint.stability.rest.RestingPotential;
import org.restpoint.stability.rest.Settling;
import org.restpoint.stability.suspicion.Circumstances;
import org.restpoint.stability.suspicion.HowItRested;

/** Turns what was read into a result or a calibration, with its id. */
final class Reckoning {

  private final ProbeSettings settings;
  private final Ids ids;
  private final CalibrationBook calibrations;
  private final Matrix matrix;
  private final Scale scale;
  private final ResultMaker results;
  private final Doorman doorman;
  private final Archive archive;
  private final String analyte;
  private final Checkbook checks;
  private int samplesSinceStandard;

  Reckoning(
      ProbeSettings settings,
      CalibrationBook calibrations,
      Doorman doorman,
      ProbeMemory memory,
      Archive archive) {
    this.settings = settings;
    this.ids = new Ids(settings.probe(), "", memory.lastIdMillis(), memory.lastIdCount());
    this.calibrations = calibrations;
    this.matrix = settings.matrix();
    this.scale = settings.scale();
    this.results = new ResultMaker(settings, archive);
    this.doorman = doorman;
    this.archive = archive;
    this.analyte = settings.analyte().name();
    this.checks =
        new Checkbook(
            settings.checking().plan(),
            memory.checks().filter(kept -> calibrations.otherAnalyte().isEmpty()));
    this.samplesSinceStandard = memory.samplesSinceStandard();
  }

  /** Something has become known of the electrode's day. */
  void know(UnaryOperator<Circumstances> news) {
    calibrations.watch().know(news.apply(calibrations.watch().past().circumstances()));
  }

  /** The ids of results and calibrations. */
  Ids ids() {
    return ids;
  }

  /** The book of checks. */
  Checkbook checks() {
    return checks;
  }

  int samplesSinceStandard() {
    return samplesSinceStandard;
  }

  /** A result that a stream should have had and has not. */
  Result missing(Instant time, Reason why) {
    return results.missing(ids.next(time), time, why);
  }

  /** A reading that was not even begun. */
  Result refused(Instant time, Optional<ObjectNode> sample, Reason why) {
    return labelled(results.refused(ids.next(time), time, sample, why));
  }

  /** What comes of an attempt that has ended. */
  Event ended(Instant time, Attempt attempt) {
    Event event = eventOf(time, attempt);
    OptionalDouble content =
        attempt.isConfidential() ? OptionalDouble.empty() : content(event, attempt);
    know(before -> before.afterSolution(content));
    return event;
  }

  /** Some results are not kept any more. */
  void forget(Collection<String> results) {
    checks.forget(results);
    know(
        before -> new Circumstances(before.soaked(), before.rinsedSince(), OptionalDouble.empty()));
  }

  /** What the solution held that the electrode was in, mol/L, where that is known. */
  private OptionalDouble content(Event event, Attempt attempt) {
    if (attempt.purpose() instanceof Purpose.OfStandard of
        && attempt.temperature() instanceof Temperature.Known known) {
      return of.standard().at(known.celsius()).stream()
          .mapToDouble(Standard.Portion::molesPerLitre)
          .findFirst();
    }
    return event instanceof Result result
        ? result.concentration().filter(amount -> amount.relation().equals("=")).stream()
            .mapToDouble(amount -> scale.molesPerLitre(amount.value()))
            .findFirst()
        : OptionalDouble.empty();
  }

  private Event eventOf(Instant time, Attempt attempt) {
    String id = ids.next(time);
    boolean atRest = attempt.settling().stage() == Settling.Stage.AT_REST;
    if (attempt.purpose() instanceof Purpose.OfStandard of) {
      Calibration calibration =
          atRest
              ? standard(id, time, attempt, of.standard())
              : failed(id, time, attempt, of.standard(), results.whyUnsettled(attempt));
      return calibration.withFlags(attempt.skipped());
    }
    return labelled(atRest ? sample(id, time, attempt) : results.unsettled(id, time, attempt));
  }

  /** With the record of its sample as it is known now, which may be more than at the beginning. */
  private Result labelled(Result result) {
    return result
        .sample()
        .map(given -> SampleLabel.on(result, known(given), Optional.of(analyte)))
        .orElse(result);
  }

  private ObjectNode known(ObjectNode given) {
    return archive
        .record(given.path("number").asText(""))
        .map(SampleRecord::sample)
        .orElseGet(() -> Merged.of(Optional.empty(), given).sample());
  }

  private Calibration failed(
      String id, Instant time, Attempt attempt, Standard standard, List<Reason> reasons) {
    return calibrations.failed(id, time, standard, reasons, howItRested(attempt));
  }

  private static HowItRested howItRested(Attempt attempt) {
    Settling settling = attempt.settling();
    boolean atRest = settling.stage() == Settling.Stage.AT_REST;
    double spread =
        atRest
            ? settling.potential().spreadMillivolts()
            : settling.taken() == 0 ? 0 : settling.progress().spreadMillivolts();
    return new HowItRested(
        atRest,
        settling.elapsedSeconds(),
        spread,
        atRest && settling.potential().creeping(),
        atRest && settling.potential().forecast());
  }

  /** The operator accepts the refused round of standards as it is. */
  Calibration accepted(Instant time, Optional<String> because) {
    return calibrations.accept(ids.next(time), time, because);
  }

  private Calibration standard(String id, Instant time, Attempt attempt, Standard standard) {
    RestingPotential rest = attempt.settling().potential();
    Optional<Reason> trouble =
        Plausible.troubleWith(attempt.temperature())
            .or(() -> Plausible.troubleWith(rest.millivolts()));
    if (trouble.isPresent()) {
      return failed(id, time, attempt, standard, List.of(trouble.get()));
    }
    double celsius = ((Temperature.Known) attempt.temperature()).celsius();
    Optional<Standard.Portion> portion = standard.at(celsius);
    if (portion.isEmpty()) {
      return failed(id, time, attempt, standard, List.of(notKnownAt(celsius)));
    }
    samplesSinceStandard = 0;
    double molesPerLitre = portion.get().molesPerLitre();
    return calibrations.settled(
        id,
        new StandardPoint(
            standard.name(),
            molesPerLitre,
            portion.get().relativeUncertainty(),
            matrix.coefficientOfStandard(molesPerLitre, celsius),
            rest.millivolts(),
            rest.standardUncertaintyMillivolts(),
            celsius,
            time),
        rest,
        howItRested(attempt));
  }

  private static Reason notKnownAt(double celsius) {
    return new Reason(
        "standard-temperature",
        "nobody says what it holds at %s °C".formatted(Words.number(celsius)),
        "Bring it to a temperature that its table has, usually 25 °C.");
  }

  private Result sample(String id, Instant time, Attempt attempt) {
    List<String> flags =
        new ArrayList<>(doorman.flags(time, attempt.purpose(), samplesSinceStandard));
    flags.addAll(attempt.skipped());
    if (Brackets.isOpenedBy(settings, attempt)) {
      flags.add(Brackets.OPEN);
    }
    if (attempt.purpose() instanceof Purpose.OfSample) {
      flags.addAll(checks.flags(time));
      samplesSinceStandard++;
    }
    return results.settled(id, time, attempt, calibrations.inForce(), flags);
  }
}
