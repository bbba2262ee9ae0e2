package org.restpoint.stability.calibration;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.calibration.CalibrationOutcome.SlopeBasis;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.fit.StraightLine;

/**
 * Draws a calibration line through standards read at rest and judges it.
 *
 * <p>Two standards or more: least squares of E on {@code x = log10 c · T/Tref}, Tref the mean
 * temperature of the standards, so that standards read at somewhat different temperatures lie on
 * one line. The standard deviation of a point is the larger of what is known beforehand ({@code u²
 * = mean[u²(E) + (S·u(c)/c/ln 10)²]}) and, from three points on, the residual one.
 *
 * <p>One standard: E0 alone, on the last accepted slope or, without one, on the ideal slope at the
 * standard's temperature, whose uncertainty is then that of the slope limits.
 *
 * <p>Edge results: standards within 0.1 % of the same concentration (0.03 mV of a monovalent ion,
 * less than a meter shows) draw no line and are refused as alike; a slope within 5 % of the ideal
 * one from zero is refused as none, whatever its sign: an electrode answers more than that even
 * with its wires swapped; beyond it, a slope of the wrong sign is refused as reversed.
 *
 * @param charge charge number of the ion, not 0
 * @param limits the slopes that are accepted
 */
public record Calibrator(int charge, SlopeLimits limits) {

  private static final double ALIKE_DECADES = Math.log10(1.001);

  public Calibrator {
    if (charge == 0) {
      throw new IllegalArgumentException("an ion has a charge");
    }
  }

  /**
   * Judges one standard or more.
   *
   * @param points the standards, in the order read
   * @param lastAccepted the last accepted line whose slope was once fitted; a line on the ideal
   *     slope is not one: without it, the ideal slope is taken anew and said to be so
   */
  public CalibrationOutcome judge(
      List<StandardPoint> points, Optional<CalibrationLine> lastAccepted) {
    if (points.isEmpty()) {
      throw new IllegalArgumentException("a calibration needs a standard");
    }
    return points.size() == 1 ? offset(points.get(0), lastAccepted) : line(points);
  }

  private CalibrationOutcome offset(StandardPoint point, Optional<CalibrationLine> lastAccepted) {
    CalibrationLine before = lastAccepted.orElseGet(() -> idealLine(point.celsius()));
    double ratio = Nernst.kelvin(point.celsius()) / Nernst.kelvin(before.referenceCelsius());
    double x = Math.log10(point.molesPerLitre()) * ratio;
    double slope = before.slopeMillivoltsPerDecade();
    double slopeVariance = before.slopeVariance();
    CalibrationLine line =
        new CalibrationLine(
            point.millivolts() - slope * x,
            slope,
            before.referenceCelsius(),
            pointVariance(point, slope) + x * x * slopeVariance,
            slopeVariance,
            -x * slopeVariance);
    List<Reason> reasons =
        lastAccepted.flatMap(last -> verdict().onSlopeTakenOver(last)).stream().toList();
    SlopeBasis basis = lastAccepted.isPresent() ? SlopeBasis.LAST_ACCEPTED : SlopeBasis.IDEAL;
    return new CalibrationOutcome(
        List.of(point), Optional.of(line), OptionalDouble.empty(), basis, reasons);
  }

  private CalibrationLine idealLine(double celsius) {
    double ideal = Nernst.idealSlopeMillivoltsPerDecade(charge, celsius);
    double deviation = ideal * limits.uncertaintyOfIdealPercent() / 100;
    return new CalibrationLine(0, ideal, celsius, 0, deviation * deviation, 0);
  }

  private CalibrationOutcome line(List<StandardPoint> points) {
    double referenceCelsius =
        points.stream().mapToDouble(StandardPoint::celsius).average().orElseThrow();
    double referenceKelvin = Nernst.kelvin(referenceCelsius);
    double[] logs = new double[points.size()];
    double[] x = new double[points.size()];
    double[] y = new double[points.size()];
    for (int i = 0; i < x.length; i++) {
      StandardPoint point = points.get(i);
      logs[i] = Math.log10(point.molesPerLitre());
      x[i] = logs[i] * Nernst.kelvin(point.celsius()) / referenceKelvin;
      y[i] = point.millivolts();
    }
    if (span(logs) < ALIKE_DECADES) {
      return refused(points, SlopeVerdict.alike());
    }
    if (span(x) < ALIKE_DECADES) {
      return refused(points, SlopeVerdict.alikeByTemperature());
    }
    StraightLine fit = StraightLine.through(x, y);
    if (fit.slope() == 0) {
      return refused(points, SlopeVerdict.flat());
    }
    double sigma = pointDeviation(points, fit);
    CalibrationLine drawn =
        new CalibrationLine(
            fit.intercept(),
            fit.slope(),
            referenceCelsius,
            fit.interceptVariance(sigma),
            fit.slopeVariance(sigma),
            fit.covariance(sigma));
    return new CalibrationOutcome(
        points,
        Optional.of(drawn),
        fit.residualDeviation(),
        SlopeBasis.FITTED,
        verdict().onFitted(drawn).stream().toList());
  }

  private SlopeVerdict verdict() {
    return new SlopeVerdict(charge, limits);
  }

  private static CalibrationOutcome refused(List<StandardPoint> points, Reason reason) {
    return new CalibrationOutcome(
        points, Optional.empty(), OptionalDouble.empty(), SlopeBasis.FITTED, List.of(reason));
  }

  private static double span(double[] values) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      lowest = Math.min(lowest, value);
      highest = Math.max(highest, value);
    }
    return highest - lowest;
  }

  private static double pointDeviation(List<StandardPoint> points, StraightLine fit) {
    double before =
        points.stream()
            .mapToDouble(point -> pointVariance(point, fit.slope()))
            .average()
            .orElseThrow();
    return Math.max(Math.sqrt(before), fit.residualDeviation().orElse(0));
  }

  private static double pointVariance(StandardPoint point, double slope) {
    double standard = slope * point.relativeUncertainty() / Math.log(10);
    double potential = point.standardUncertaintyMillivolts();
    return potential * potential + standard * standard;
  }
}
