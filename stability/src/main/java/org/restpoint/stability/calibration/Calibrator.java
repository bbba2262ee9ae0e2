package org.restpoint.stability.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
 * <p>Edge results: standards that are all the same concentration draw no line and are refused; a
 * slope of the wrong sign is refused as reversed, whatever its size.
 *
 * @param charge charge number of the ion
 * @param limits the slopes that are accepted
 */
public record Calibrator(int charge, SlopeLimits limits) {

  /** Judges one standard or more, against the last accepted line where there is one. */
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
    SlopeBasis basis = lastAccepted.isPresent() ? SlopeBasis.LAST_ACCEPTED : SlopeBasis.IDEAL;
    return new CalibrationOutcome(
        List.of(point), Optional.of(line), OptionalDouble.empty(), basis, List.of());
  }

  private CalibrationLine idealLine(double celsius) {
    double ideal = Nernst.idealSlopeMillivoltsPerDecade(charge, celsius);
    double deviation = ideal * limits.standardDeviationPercent() / 100;
    return new CalibrationLine(0, ideal, celsius, 0, deviation * deviation, 0);
  }

  private CalibrationOutcome line(List<StandardPoint> points) {
    double referenceCelsius =
        points.stream().mapToDouble(StandardPoint::celsius).average().orElseThrow();
    double referenceKelvin = Nernst.kelvin(referenceCelsius);
    double[] x = new double[points.size()];
    double[] y = new double[points.size()];
    for (int i = 0; i < x.length; i++) {
      StandardPoint point = points.get(i);
      x[i] = Math.log10(point.molesPerLitre()) * Nernst.kelvin(point.celsius()) / referenceKelvin;
      y[i] = point.millivolts();
    }
    double lowest = points.stream().mapToDouble(StandardPoint::molesPerLitre).min().orElseThrow();
    double highest = points.stream().mapToDouble(StandardPoint::molesPerLitre).max().orElseThrow();
    if (lowest == highest) {
      return new CalibrationOutcome(
          points, Optional.empty(), OptionalDouble.empty(), SlopeBasis.FITTED, List.of(alike()));
    }
    StraightLine fit = StraightLine.through(x, y);
    double sigma = pointDeviation(points, fit);
    List<Reason> reasons = new ArrayList<>();
    Optional<CalibrationLine> line = Optional.empty();
    if (fit.slope() == 0) {
      reasons.add(flat());
    } else {
      CalibrationLine drawn =
          new CalibrationLine(
              fit.intercept(),
              fit.slope(),
              referenceCelsius,
              fit.interceptVariance(sigma),
              fit.slopeVariance(sigma),
              fit.covariance(sigma));
      line = Optional.of(drawn);
      slopeReason(drawn).ifPresent(reasons::add);
    }
    return new CalibrationOutcome(
        points, line, fit.residualDeviation(), SlopeBasis.FITTED, reasons);
  }

  private double pointDeviation(List<StandardPoint> points, StraightLine fit) {
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

  private Optional<Reason> slopeReason(CalibrationLine line) {
    double percent = line.slopePercent(charge);
    String seen =
        String.format(
            Locale.ROOT,
            "the slope is %.2f mV/decade, %.1f %% of the ideal %.2f at %.1f °C",
            line.slopeMillivoltsPerDecade(),
            percent,
            Nernst.idealSlopeMillivoltsPerDecade(charge, line.referenceCelsius()),
            line.referenceCelsius());
    String accepted =
        String.format(
            Locale.ROOT, "; accepted are %s to %s %%", limits.lowPercent(), limits.highPercent());
    if (percent < 0) {
      return Optional.of(
          new Reason(
              "slope-reversed",
              seen + ": it has the wrong sign",
              "Look whether electrode and reference are swapped at the meter, whether the meter shows"
                  + " the potential with its sign, and whether standards were swapped."));
    }
    if (percent < limits.lowPercent()) {
      return Optional.of(
          new Reason(
              "slope-low",
              seen + accepted,
              "Read the standards again with fresh portions, rinsed and blotted between them; look"
                  + " for an air bubble; soak the electrode; if it stays low, the membrane is"
                  + " ageing."));
    }
    if (percent > limits.highPercent()) {
      return Optional.of(
          new Reason(
              "slope-high",
              seen + accepted,
              "Read the standards again with fresh portions: one of them is likely diluted,"
                  + " contaminated or swapped, or the electrode carried solution from one to the"
                  + " next."));
    }
    return Optional.empty();
  }

  private static Reason alike() {
    return new Reason(
        "standards-alike",
        "all standards have the same concentration, so no slope can be drawn",
        "Read a standard of another concentration, a decade away if there is one.");
  }

  private static Reason flat() {
    return new Reason(
        "slope-none",
        "the potential is the same in all standards",
        "Look whether the electrode is connected, has its cap off and stands in the solution.");
  }
}
