package org.restpoint.acquisition.probe;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.probe.StandardsWatch.Look;
import org.restpoint.stability.calibration.CalibrationOutcome;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.calibration.ResponseCurve;
import org.restpoint.stability.calibration.StandardPoint;
import org.restpoint.stability.suspicion.Cause;
import org.restpoint.stability.suspicion.Clues;
import org.restpoint.stability.suspicion.HowItRested;
import org.restpoint.stability.suspicion.Moved;
import org.restpoint.stability.suspicion.StandardHistory;
import org.restpoint.stability.suspicion.Suspicion;

/**
 * Puts into words what there is against a standard, and why it may be.
 *
 * @param settings the probe
 * @param watch what is known of its standards
 */
record StandardDoubt(ProbeSettings settings, StandardsWatch watch) {

  /** The code of a standard that reads off. */
  static final String CODE = "standard-off";

  /** Refusals that a bad standard explains; others name what is broken themselves. */
  private static final Set<String> EXPLAINED = Set.of(CODE, "slope-low", "slope-high", "unsettled");

  private static final Set<String> OF_SLOPE = Set.of("slope-low", "slope-high", "slope-outdated");

  /** The outcome of a round as this standard leaves it: refused where it reads off. */
  CalibrationOutcome judged(Look look, CalibrationOutcome outcome) {
    if (look.against().isPresent()) {
      return off(look, outcome);
    }
    if (!outcome.accepted()) {
      return outcome;
    }
    if (!look.withIt().isEmpty()) {
      return outcome.remarkedOn(movedTogether(look));
    }
    return watch.isFarAnew(look) ? outcome.remarkedOn(movedSince(look)) : outcome;
  }

  private CalibrationOutcome off(Look look, CalibrationOutcome outcome) {
    Reason reason =
        new Reason(
            CODE,
            "standard %s reads %s than the calibration in force expects: %s; %s"
                .formatted(
                    look.point().standard(),
                    beside(look),
                    foundAndExpected(look),
                    look.against().orElseThrow()),
            causes(look, Optional.of(CODE)).stream()
                .map(Calibration.Cause::remedy)
                .findFirst()
                .orElse("Read it again with a fresh portion."));
    boolean explains = outcome.reasons().stream().map(Reason::code).allMatch(OF_SLOPE::contains);
    return explains ? outcome.explainedBy(reason) : outcome.refusedAlsoFor(reason);
  }

  private static String beside(Look look) {
    double moved = look.moved().orElseThrow();
    return String.format(
        Locale.ROOT, "%.1f mV %s", Math.abs(moved), moved < 0 ? "lower" : "higher");
  }

  private static String foundAndExpected(Look look) {
    double found = look.point().millivolts();
    double percent = 100 * (ratio(look.moved().orElseThrow(), look.line().orElseThrow()) - 1);
    return String.format(
        Locale.ROOT,
        "%.2f mV instead of %.2f, as %.0f %% %s concentrated",
        found,
        found - look.moved().orElseThrow(),
        Math.abs(percent),
        percent < 0 ? "less" : "more");
  }

  private static double ratio(double moved, ResponseCurve line) {
    return Math.pow(10, moved / line.slopeMillivoltsPerDecade());
  }

  private static Reason movedTogether(Look look) {
    List<StandardPoint> all = new ArrayList<>(look.withIt());
    all.add(look.point());
    ResponseCurve line = look.line().orElseThrow();
    return new Reason(
        "offset-moved",
        "the standards have moved alike, %s: it is the electrode that moved, not a standard"
            .formatted(
                all.stream()
                    .map(
                        point ->
                            String.format(
                                Locale.ROOT,
                                "%s by %.1f mV",
                                point.standard(),
                                StandardsWatch.moved(point, line)))
                    .collect(Collectors.joining(", "))),
        "Doubt the results since the last standard that passed. If it goes on, soak or clean the membrane"
            + " and look at the reference: its electrolyte and its junction.");
  }

  private static Reason movedSince(Look look) {
    return new Reason(
        "offset-moved",
        "standard %s reads %s than the calibration before expects, which is older than valid-for;"
                .formatted(look.point().standard(), beside(look))
            + " nothing tells whether the electrode moved or the standard is off",
        "Read a second standard: the slope shows whether one of them is off.");
  }

  /** Why a standard that was refused for this reads off, the likeliest cause first. */
  List<Calibration.Cause> causes(Look look, Optional<String> code) {
    return told(code, clues(look));
  }

  /** The same of one that gave no potential. */
  List<Calibration.Cause> causes(
      Standard standard, HowItRested rested, String code, LocalDate day) {
    StandardHistory history = watch.past().history(standard.name());
    return told(
        Optional.of(code),
        new Clues(
            Optional.empty(),
            Optional.of(rested),
            history.usualSeconds(),
            history.usualSpreadMillivolts(),
            watch.past().circumstances(),
            slopes(),
            Optional.empty(),
            daysToExpiry(standard, day)));
  }

  private static List<Calibration.Cause> told(Optional<String> code, Clues clues) {
    return code.filter(EXPLAINED::contains).stream()
        .flatMap(explained -> new Suspicion(clues).causes().stream())
        .map(StandardDoubt::told)
        .toList();
  }

  private static Calibration.Cause told(Cause cause) {
    return new Calibration.Cause(cause.suspect().code(), cause.evidence(), cause.remedy());
  }

  private Clues clues(Look look) {
    StandardPoint point = look.point();
    StandardHistory history = watch.past().history(point.standard());
    Optional<Moved> moved =
        look.line()
            .map(
                line ->
                    new Moved(
                        look.moved().orElseThrow(),
                        point.molesPerLitre(),
                        point.molesPerLitre() * ratio(look.moved().orElseThrow(), line),
                        watch.refusedBefore(look)));
    return new Clues(
        moved,
        Optional.of(look.rested()),
        history.usualSeconds(),
        history.usualSpreadMillivolts(),
        watch.past().circumstances(),
        slopes(),
        look.line().map(line -> warmth(point, line)),
        Stream.ofNullable(settings.standards().get(point.standard()))
            .map(
                standard ->
                    daysToExpiry(standard, LocalDate.ofInstant(point.time(), ZoneOffset.UTC)))
            .findFirst()
            .orElseGet(OptionalLong::empty));
  }

  private Clues.Warmth warmth(StandardPoint point, ResponseCurve line) {
    return new Clues.Warmth(
        point.celsius(),
        line.referenceCelsius(),
        settings.calibrate().temperatureWithinKelvin(),
        point.millivolts() - line.millivoltsAt(point.activity(), line.referenceCelsius()));
  }

  private List<Double> slopes() {
    return watch.past().slopes().stream().map(StandardsPast.SlopeSeen::percent).toList();
  }

  private static OptionalLong daysToExpiry(Standard standard, LocalDate day) {
    return standard
        .expires()
        .map(expires -> OptionalLong.of(ChronoUnit.DAYS.between(day, expires)))
        .orElseGet(OptionalLong::empty);
  }
}
