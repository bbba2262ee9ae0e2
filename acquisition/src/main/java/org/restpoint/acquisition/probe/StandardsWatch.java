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
 * electrode that moved, and both draw a new line. A round is held against the line that was in
 * force when it began, moved as its first standards have. Nothing but the very same standard is
 * held against a calibration on an ideal slope, which nobody measured, and nothing against one that
 * is older than it is valid for: a round that begins so begins anew, and only its slope is judged.
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
   * @param anew whether it begins a round that is not held against the calibration before it
   * @param overNight whether no standard had been read for a night
   * @param against what stands against it; empty where it passes
   * @param withIt standards that read off before and have moved alike
   */
  record Look(
      StandardPoint point,
      HowItRested rested,
      Optional<ResponseCurve> line,
      boolean judged,
      boolean anew,
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
      StandardPoint point,
      HowItRested rested,
      Optional<InForce> inForce,
      List<StandardPoint> round) {
    boolean begins = round.isEmpty();
    List<StandardPoint> others =
        round.stream().filter(other -> !other.standard().equals(point.standard())).toList();
    if (begins) {
      past = past.inRound(inForce.filter(now -> holds(now, point.time())).map(InForce::curve));
    }
    boolean overNight =
        inForce
            .filter(now -> MoveLimit.isNight(Duration.between(now.since(), point.time())))
            .isPresent();
    boolean again = inForce.filter(now -> begins && isAgain(now, point)).isPresent();
    boolean judged = past.base().isPresent() || again;
    Optional<ResponseCurve> line =
        lines(others, inForce)
            .min(Comparator.comparingDouble(curve -> Math.abs(moved(point, curve))));
    Optional<String> against =
        line.filter(curve -> judged)
            .flatMap(
                curve ->
                    limit(curve)
                        .against(moved(point, curve), overNight, past.history(point.standard())));
    List<StandardPoint> withIt = against.isPresent() ? alike(point, line.orElseThrow()) : List.of();
    boolean electrode = !withIt.isEmpty() && withIt.size() + 1 > others.size();
    return new Look(
        point,
        rested,
        line,
        judged,
        begins && !judged && inForce.filter(now -> isMeasured(now)).isPresent(),
        overNight,
        electrode ? Optional.empty() : against,
        electrode ? withIt : List.of());
  }

  /** Whether standards of any concentration may be held against a calibration. */
  private boolean holds(InForce calibration, Instant time) {
    return isMeasured(calibration) && !isOld(calibration, time);
  }

  /**
   * Whether a calibration on an ideal slope was drawn through this standard: then it holds here.
   */
  private boolean isAgain(InForce calibration, StandardPoint point) {
    List<StandardHistory.Passed> before = past.history(point.standard()).passed();
    return !isMeasured(calibration)
        && !isOld(calibration, point.time())
        && !before.isEmpty()
        && before.get(before.size() - 1).time().equals(calibration.since());
  }

  private static boolean isMeasured(InForce calibration) {
    return calibration.slopeBasis() != SlopeBasis.IDEAL;
  }

  private boolean isOld(InForce calibration, Instant time) {
    return calibration.since().plus(settings.calibrate().validFor()).isBefore(time)
        || calibration.since().isAfter(time);
  }

  /**
   * The lines that a standard may lie on: the round's base, moved as the standards of the round
   * have, and as it is where they have hardly; and where the operator accepted the calibration in
   * force, the one before it. Without a base the line in force, which then only tells the
   * direction.
   */
  private Stream<ResponseCurve> lines(List<StandardPoint> round, Optional<InForce> inForce) {
    if (past.base().isEmpty()) {
      return inForce.map(InForce::curve).stream();
    }
    ResponseCurve base = past.base().get();
    double shift = round.stream().mapToDouble(point -> moved(point, base)).average().orElse(0);
    return Stream.of(
            Stream.of(shifted(base, shift)),
            Stream.of(base).filter(line -> Math.abs(shift) <= limit(line).millivolts()),
            past.overridden().flatMap(Overridden::before).map(InForce::curve).stream())
        .flatMap(lines -> lines);
  }

  private static ResponseCurve shifted(ResponseCurve line, double millivolts) {
    return new ResponseCurve(
        line.offsetMillivolts() + millivolts,
        line.slopeMillivoltsPerDecade(),
        line.lowEndMolesPerLitre(),
        line.referenceCelsius(),
        line.compensation(),
        line.fromLine(),
        line.fromStandards());
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

  /** Whether a round that begins anew begins further off than a standard may else read. */
  boolean isFarAnew(Look look) {
    return look.anew()
        && look.line()
            .filter(line -> Math.abs(moved(look.point(), line)) > limit(line).millivolts())
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
