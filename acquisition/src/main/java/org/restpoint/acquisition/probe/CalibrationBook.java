package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.probe.ProbeMemory.InForce;
import org.restpoint.stability.calibration.CalibrationOutcome;
import org.restpoint.stability.calibration.CalibrationOutcome.SlopeBasis;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.calibration.ResponseCurve;
import org.restpoint.stability.calibration.StandardPoint;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.rest.RestingPotential;
import org.restpoint.stability.suspicion.HowItRested;

/**
 * A probe's calibrations: the one in force, and the round of standards being read.
 *
 * <p>A round begins with the first standard after a sample; a standard read twice in a round counts
 * with its last reading, and one older than a calibration is valid for counts no more. After each
 * standard the round is judged: one standard sets the offset, two or more the slope as well; and
 * the standard itself, beside what was expected of it (see {@link StandardsWatch}). A standard that
 * reads off is no part of the round; where the slope is refused, nobody knows which of them is bad,
 * and the round stays. A refusal leaves the calibration in force where it is, but no sample is read
 * until a fresh standard passes or the operator accepts the refused one as it is.
 */
final class CalibrationBook {

  private static final double USUAL_CELSIUS = 25;

  /** The code of a calibration that was refused and that the operator accepted. */
  static final String OVERRIDDEN = "standard-overridden";

  private final ProbeSettings settings;
  private Optional<InForce> inForce;
  private final List<StandardPoint> round;
  private final Set<String> foretold;
  private final Optional<String> otherAnalyte;
  private List<Reason> refused;
  private Optional<String> standardAgain;
  private final StandardsWatch watch;
  private final StandardDoubt doubt;

  CalibrationBook(ProbeSettings settings, ProbeMemory memory) {
    this.settings = settings;
    this.inForce = memory.inForce();
    this.round = new ArrayList<>(memory.round());
    this.foretold = new TreeSet<>(memory.foretold().orElse(List.of()));
    this.refused = memory.refused();
    this.standardAgain = memory.standardAgain().filter(settings.standards()::containsKey);
    this.watch =
        new StandardsWatch(
            settings,
            memory.standards().orElseGet(StandardsPast::blank).only(this::isStillDefined));
    this.doubt = new StandardDoubt(settings, watch);
    this.otherAnalyte =
        memory.analyte().filter(analyte -> !analyte.equals(settings.analyte().name()));
    if (otherAnalyte.isPresent()) {
      forget();
    }
    round.removeIf(point -> !isStillDefined(point));
  }

  /** The ion its calibrations were of before the station file was changed to another one. */
  Optional<String> otherAnalyte() {
    return otherAnalyte;
  }

  /** Whether the station file still means the same solution by the point's standard. */
  private boolean isStillDefined(StandardPoint point) {
    Standard standard = settings.standards().get(point.standard());
    return standard != null
        && standard
            .at(point.celsius())
            .filter(portion -> portion.molesPerLitre() == point.molesPerLitre())
            .isPresent();
  }

  Optional<InForce> inForce() {
    return inForce;
  }

  List<StandardPoint> round() {
    return List.copyOf(round);
  }

  /** The standards of the round whose potentials are forecasts. */
  List<String> foretold() {
    return round.stream().map(StandardPoint::standard).filter(foretold::contains).toList();
  }

  List<Reason> refused() {
    return refused;
  }

  /** The standard whose reading was refused, while the round does not stand. */
  Optional<String> standardAgain() {
    return standardAgain;
  }

  /**
   * The slope of the calibration in force, or the ion's ideal one at 25 °C while there is none:
   * what a tolerance in per cent is taken on.
   */
  double slopeMillivoltsPerDecade() {
    return inForce
        .map(calibration -> calibration.curve().slopeMillivoltsPerDecade())
        .orElseGet(
            () -> Nernst.idealSlopeMillivoltsPerDecade(settings.analyte().charge(), USUAL_CELSIUS));
  }

  /** What is known of its standards beside the calibration in force. */
  StandardsWatch watch() {
    return watch;
  }

  /** A sample is read: the next standard begins a new round. */
  void endRound() {
    round.clear();
    watch.endRound();
  }

  /** Another electrode: no calibration is in force, and no slope is known. */
  void forget() {
    inForce = Optional.empty();
    round.clear();
    refused = List.of();
    standardAgain = Optional.empty();
    watch.forget();
  }

  /** A standard came to rest, foretold or read, perhaps still creeping. */
  Calibration settled(String id, StandardPoint point, RestingPotential rest, HowItRested rested) {
    round.removeIf(
        earlier -> earlier.time().plus(settings.calibrate().validFor()).isBefore(point.time()));
    List<StandardPoint> before = List.copyOf(round);
    StandardsWatch.Look look = watch.look(point, rested, inForce, round);
    if (!look.withIt().isEmpty()) {
      round.clear();
      round.addAll(look.withIt());
    }
    round.removeIf(earlier -> earlier.standard().equals(point.standard()));
    round.add(point);
    foretold.remove(point.standard());
    if (rest.forecast()) {
      foretold.add(point.standard());
    }
    CalibrationOutcome outcome =
        doubt.judged(
            look,
            Faults.explained(
                settings.calibrator().judge(round, lastSlope()),
                settings.analyte().charge(),
                inForce.map(InForce::curve)));
    List<Calibration.Cause> causes =
        doubt.causes(look, outcome.reasons().stream().map(Reason::code).findFirst());
    refused = outcome.reasons();
    standardAgain = outcome.accepted() ? Optional.empty() : Optional.of(point.standard());
    if (outcome.accepted()) {
      inForce = Optional.of(putInForce(id, point.time(), outcome));
      watch.passed(look, outcome);
    } else {
      if (look.against().isPresent()) {
        round.clear();
        round.addAll(before);
      }
      watch.refused(look, outcome);
    }
    return event(id, point.time(), outcome, rest.creeping(), causes);
  }

  private Optional<ResponseCurve> lastSlope() {
    return inForce
        .filter(calibration -> calibration.slopeBasis() != SlopeBasis.IDEAL)
        .map(InForce::curve);
  }

  /** A standard could not be read. */
  Calibration failed(
      String id, Instant time, Standard standard, List<Reason> reasons, HowItRested rested) {
    refused =
        reasons.stream()
            .map(
                reason ->
                    new Reason(
                        reason.code(),
                        "standard %s: %s".formatted(standard.name(), reason.text()),
                        reason.remedy()))
            .toList();
    standardAgain = Optional.of(standard.name());
    watch.failed();
    return event(
        id,
        time,
        CalibrationOutcome.refused(round, refused),
        false,
        doubt.causes(
            standard, rested, reasons.get(0).code(), LocalDate.ofInstant(time, ZoneOffset.UTC)));
  }

  /**
   * The operator accepts the refused round as it is. Throws an {@link IllegalStateException} where
   * there is none, which {@link Doorman} sees to.
   *
   * @param because why, in the operator's words
   */
  Calibration accept(String id, Instant time, Optional<String> because) {
    List<StandardPoint> points = watch.acceptable();
    if (points.isEmpty()) {
      throw new IllegalStateException("no refused round whose line could be accepted");
    }
    Reason told =
        new Reason(
            OVERRIDDEN,
            "%s; the operator has accepted it%s"
                .formatted(refused.get(0).text(), because.map(text -> ": " + text).orElse("")),
            "Results that rest on it are flagged until a standard passes: read a fresh one.");
    CalibrationOutcome outcome = settings.calibrator().judge(points, lastSlope()).overridden(told);
    watch.accepted(id, inForce);
    inForce = Optional.of(putInForce(id, points.get(points.size() - 1).time(), outcome));
    round.clear();
    round.addAll(points);
    refused = List.of();
    standardAgain = Optional.empty();
    return event(id, time, outcome, false, List.of());
  }

  private InForce putInForce(String id, Instant time, CalibrationOutcome outcome) {
    Optional<Instant> slopeSince = Optional.empty();
    OptionalDouble lowest = OptionalDouble.empty();
    OptionalDouble highest = OptionalDouble.empty();
    if (outcome.basis() == SlopeBasis.FITTED) {
      slopeSince = Optional.of(time);
      lowest = outcome.points().stream().mapToDouble(StandardPoint::molesPerLitre).min();
      highest = outcome.points().stream().mapToDouble(StandardPoint::molesPerLitre).max();
    } else if (outcome.basis() == SlopeBasis.LAST_ACCEPTED && inForce.isPresent()) {
      slopeSince = inForce.get().slopeSince();
      lowest = inForce.get().lowestMolesPerLitre();
      highest = inForce.get().highestMolesPerLitre();
    }
    return new InForce(
        id,
        time,
        outcome.curve().orElseThrow(),
        outcome.basis(),
        slopeSince,
        outcome.residualMillivolts(),
        lowest,
        highest);
  }

  private Calibration event(
      String id,
      Instant time,
      CalibrationOutcome outcome,
      boolean creeping,
      List<Calibration.Cause> causes) {
    return new CalibrationEvent(settings, outcome, Set.copyOf(foretold), creeping, causes)
        .of(id, time);
  }
}
