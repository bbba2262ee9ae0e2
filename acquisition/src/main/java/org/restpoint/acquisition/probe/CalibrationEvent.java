package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.stability.calibration.CalibrationOutcome;
import org.restpoint.stability.calibration.CalibrationOutcome.PointFit;
import org.restpoint.stability.calibration.CalibrationOutcome.SlopeBasis;
import org.restpoint.stability.calibration.DetectionLimit;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.calibration.ResponseCurve;
import org.restpoint.stability.calibration.StandardPoint;

/**
 * A judged round of standards as it is told.
 *
 * @param settings the probe
 * @param outcome what came of the round
 * @param foretold the standards whose potentials are forecasts
 * @param creeping whether the last standard still crept when it was taken
 * @param causes why a refused standard reads off, the likeliest first
 */
record CalibrationEvent(
    ProbeSettings settings,
    CalibrationOutcome outcome,
    Set<String> foretold,
    boolean creeping,
    List<Calibration.Cause> causes) {

  Calibration of(String id, Instant time) {
    Optional<ResponseCurve> curve = outcome.curve();
    return new Calibration(
        id,
        1,
        settings.station(),
        settings.probe(),
        time,
        outcome.accepted() ? Calibration.Verdict.ACCEPTED : Calibration.Verdict.REFUSED,
        outcome.reasons(),
        IntStream.range(0, outcome.points().size()).mapToObj(this::point).toList(),
        curve.map(drawn -> outcome.basis().name().toLowerCase(Locale.ROOT).replace('_', ' ')),
        number(curve.map(ResponseCurve::slopeMillivoltsPerDecade)),
        number(curve.map(drawn -> drawn.slopePercent(settings.analyte().charge()))),
        number(curve.map(ResponseCurve::offsetMillivolts)),
        number(curve.map(ResponseCurve::slopeStandardUncertainty)),
        outcome.residualMillivolts(),
        outcome.detectionLimit().map(this::limit),
        number(curve.map(ResponseCurve::referenceCelsius)),
        flags(),
        outcome.remarks(),
        causes);
  }

  private List<String> flags() {
    List<String> flags = new ArrayList<>();
    boolean drawn = outcome.curve().isPresent();
    if (drawn && outcome.basis() != SlopeBasis.FITTED) {
      flags.add("one-point");
    }
    if (drawn && outcome.basis() == SlopeBasis.IDEAL) {
      flags.add("ideal-slope");
    }
    if (creeping) {
      flags.add("creeping");
    }
    outcome.remarks().stream().map(Reason::code).forEach(flags::add);
    return flags;
  }

  private Calibration.Limit limit(DetectionLimit limit) {
    Scale scale = settings.scale();
    return new Calibration.Limit(
        scale.of(limit.molesPerLitre()),
        scale.unit(),
        scale.basis(),
        scale.of(limit.standardUncertainty()));
  }

  private Calibration.Point point(int index) {
    StandardPoint point = outcome.points().get(index);
    Standard.Portion portion = portion(point);
    Optional<PointFit> fit =
        outcome.fits().isEmpty() ? Optional.empty() : Optional.of(outcome.fits().get(index));
    return new Calibration.Point(
        point.standard(),
        portion.value(),
        portion.scale().unit(),
        portion.scale().basis(),
        point.millivolts(),
        point.standardUncertaintyMillivolts(),
        foretold.contains(point.standard()),
        point.celsius(),
        point.time(),
        number(outcome.curve().map(curve -> residual(point, curve))),
        number(fit.map(PointFit::leverage)));
  }

  private static double residual(StandardPoint point, ResponseCurve curve) {
    return point.millivolts() - curve.millivoltsAt(point.activity(), point.celsius());
  }

  private Standard.Portion portion(StandardPoint point) {
    Standard standard = settings.standards().get(point.standard());
    if (standard == null) {
      throw new IllegalStateException("a point of an unknown standard: " + point.standard());
    }
    return standard.at(point.celsius()).orElseThrow();
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.map(OptionalDouble::of).orElseGet(OptionalDouble::empty);
  }
}
