package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.restpoint.acquisition.probe.ProbeMemory.InForce;
import org.restpoint.acquisition.probe.StandardsPast.Overridden;
import org.restpoint.acquisition.probe.StandardsPast.SlopeSeen;
import org.restpoint.config.station.SettleRule.Within;
import org.restpoint.stability.calibration.CalibrationOutcome;
import org.restpoint.stability.calibration.CalibrationOutcome.SlopeBasis;
import org.restpoint.stability.calibration.ResponseCurve;
import org.restpoint.stability.calibration.StandardPoint;
import org.restpoint.stability.rest.Tolerance;
import org.restpoint.stability.suspicion.Circumstances;
import org.restpoint.stability.suspicion.HowItRested;
import org.restpoint.stability.suspicion.MoveLimit;
import org.restpoint.stability.suspicion.StandardHistory;

/**
 * Holds each standard against the calibration in force and against how it read before.
 *
 * <p>A standard passes that reads within the limit of what the calibration expects. One that does
 * not is off, unless another standard read off just before and has moved alike: then it is the
 * electrode that moved, and both draw a new line. Nothing is held against a calibration on an ideal
 * slope, which nobody measured, or against one that is older than it is valid for: a round that
 * begins so begins anew, and only its slope and scatter are judged.
 */
final class StandardsWatch {

  /** Refusals of a line that could be drawn and may be accepted all the same. */
  private static final Set<String> ACCEPTABLE =
      Set.of(StandardDoubt.CODE, "slope-low", "slope-high", "slope-outdated");

  private final ProbeSettings settings;
  private StandardsPast past;

  StandardsWatch(ProbeSettings settings, StandardsPast past) {
    this.settings = settings;
    this.past = past;
  }

  /**
   * A standard beside what was expected of it.
   *
   * @param point the standard
   * @param rested how it came to rest
   * @param line the line it is held against, if there is one
   * @param judged whether it may be held against it
   * @param overNight whether no standard had been read for a night
   * @param against what stands against it; empty where it passes
   * @param withIt standards that read off before and have moved alike
   */
  record Look(
      StandardPoint point,
      HowItRested rested,
      Optional<ResponseCurve> line,
      boolean judged,
      boolean overNight,
      Optional<String> against,
      List<StandardPoint> withIt) {

    /** How far it moved, in mV. */
    Optional<Double> moved() {
      return line.map(curve -> StandardsWatch.moved(point, curve));
    }
  }

  StandardsPast past() {
    return past;
  }

  /** Whether the calibration in force was refused, and the operator accepted it. */
  boolean isOverridden(InForce calibration) {
    return past.overridden().map(Overridden::id).equals(Optional.of(calibration.id()));
  }

  void know(Circumstances now) {
    past = past.knowing(now);
  }

  void endRound() {
    past = past.endRound();
  }

  void forget() {
    past = StandardsPast.blank();
  }

  /** Looks at a standard that came to rest, before it joins the round. */
  Look look(
      StandardPoint point, HowItRested rested, Optional<InForce> inForce, List<StandardPoint> round) {
    if (round.isEmpty()) {
      past =
          past.inRound(
              inForce.isEmpty() || isOld(inForce.get(), point.time()));
    }
    boolean overNight =
        inForce
            .filter(latest -> MoveLimit.isNight(Duration.between(latest.since(), point.time())))
            .isPresent();
    boolean judged =
        !past.anew()
            && inForce.filter(latest -> latest.slopeBasis() != SlopeBasis.IDEAL).isPresent();
    Optional<ResponseCurve> line = nearest(point, inForce);
    Optional<String> against =
        line.filter(curve -> judged)
            .flatMap(
                curve ->
                    limit(curve)
                        .against(moved(point, curve), overNight, past.history(point.standard())));
    List<StandardPoint> withIt =
        against.isPresent() ? alike(point, line.orElseThrow()) : List.of();
    boolean outvoted = withIt.size() + 1 <= round.size();
    return new Look(
        point,
        rested,
        line,
        judged,
        overNight,
        outvoted || withIt.isEmpty() ? against : Optional.empty(),
        outvoted ? List.of() : withIt);
  }

  private boolean isOld(InForce latest, Instant time) {
    return latest.since().plus(settings.calibrate().validFor()).isBefore(time)
        || latest.since().isAfter(time);
  }

  /**
   * The line that a standard is held against: the one in force; where the operator accepted that
   * one, also the one before it, whichever is nearer.
   */
  private Optional<ResponseCurve> nearest(StandardPoint point, Optional<InForce> inForce) {
    return Stream.concat(
            inForce.stream(), past.overridden().flatMap(Overridden::before).stream())
        .map(InForce::curve)
        .min(Comparator.comparingDouble(curve -> Math.abs(moved(point, curve))));
  }

  private List<StandardPoint> alike(StandardPoint point, ResponseCurve line) {
    return past.doubted().stream()
        .filter(other -> !other.standard().equals(point.standard()))
        .filter(other -> limit(line).areAlike(moved(other, line), moved(point, line)))
        .toList();
  }

  private MoveLimit limit(ResponseCurve line) {
    Within within = settings.calibrate().movedWithin();
    Tolerance tolerance =
        within instanceof Within.Percent share
            ? new Tolerance.ConcentrationPercent(share.percent())
            : new Tolerance.Millivolts(((Within.Millivolts) within).millivolts());
    return new MoveLimit(tolerance.onSlope(line.slopeMillivoltsPerDecade()));
  }

  /** Whether it moved further than a standard in a round that is judged may. */
  boolean isFar(Look look) {
    return look.line()
        .filter(
            line ->
                limit(line)
                    .against(look.moved().orElseThrow(), look.overNight(), StandardHistory.none())
                    .isPresent())
        .isPresent();
  }

  static double moved(StandardPoint point, ResponseCurve line) {
    return point.millivolts() - line.millivoltsAt(point.activity(), point.celsius());
  }

  /** How far the same standard had moved when it was refused just before. */
  OptionalDouble refusedBefore(Look look) {
    return look.line().stream()
        .flatMapToDouble(
            line ->
                past.doubted().stream()
                    .filter(other -> other.standard().equals(look.point().standard()))
                    .mapToDouble(other -> moved(other, line)))
        .findFirst();
  }

  /** The round was accepted. */
  void passed(Look look, CalibrationOutcome outcome) {
    StandardPoint point = look.point();
    OptionalDouble moved =
        look.judged()
            ? look.moved().stream().mapToDouble(Double::doubleValue).findFirst()
            : OptionalDouble.empty();
    past =
        past.passed(
            point.standard(),
            new StandardHistory.Passed(
                point.time(),
                moved,
                look.overNight(),
                point.celsius(),
                look.rested().seconds(),
                look.rested().spreadMillivolts()),
            outcome
                .curve()
                .filter(line -> outcome.basis() == SlopeBasis.FITTED)
                .map(
                    line ->
                        new SlopeSeen(
                            outcome.points().get(0).time(),
                            line.slopePercent(settings.analyte().charge()))));
  }

  /** The round was refused. */
  void refused(Look look, CalibrationOutcome outcome) {
    boolean acceptable =
        outcome.curve().isPresent()
            && outcome.reasons().stream().allMatch(why -> ACCEPTABLE.contains(why.code()));
    past =
        past.refused(
            acceptable ? outcome.points() : List.of(),
            look.against().isPresent() ? Optional.of(look.point()) : Optional.empty());
  }

  /** A standard gave no potential to draw a line through. */
  void failed() {
    past = past.refused(List.of(), Optional.empty());
  }

  /** The refused round that the operator may accept; empty where there is none. */
  List<StandardPoint> acceptable() {
    return new ArrayList<>(past.refusedRound());
  }

  /** The operator accepted it. */
  void accepted(String id, Optional<InForce> before) {
    past = past.accepted(id, before);
  }
}
