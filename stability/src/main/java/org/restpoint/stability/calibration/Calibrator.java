package org.restpoint.stability.calibration;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.calibration.CalibrationOutcome.SlopeBasis;

/**
 * Draws a response curve through standards read at rest and judges it.
 *
 * <p>Two standards or more: weighted least squares (see {@link StandardsFit}), Tref the mean
 * temperature of the standards, so that standards read at somewhat different temperatures lie on
 * one curve. One standard: E0 alone (see {@link OneStandard}).
 *
 * <p>Edge results: standards within 0.1 % of the same activity (0.03 mV of a monovalent ion, less
 * than a meter shows) draw no line and are refused as alike; a slope within 5 % of the ideal one
 * from zero is refused as none, whatever its sign: an electrode answers more than that even with
 * its wires swapped; beyond it, a slope of the wrong sign is refused as reversed.
 *
 * @param charge charge number of the ion, not 0
 * @param limits the slopes that are accepted
 * @param lowEnd what is made of the low end
 * @param compensation how temperature counts
 * @param stockRelativeUncertainty standard uncertainty that all standards share because they were
 *     made from one stock solution, as a share of the concentration, 0 or above
 */
public record Calibrator(
    int charge,
    SlopeLimits limits,
    LowEnd lowEnd,
    Compensation compensation,
    double stockRelativeUncertainty) {

  private static final double ALIKE_DECADES = Math.log10(1.001);

  public Calibrator {
    if (charge == 0) {
      throw new IllegalArgumentException("an ion has a charge");
    }
    if (!(stockRelativeUncertainty >= 0) || Double.isInfinite(stockRelativeUncertainty)) {
      throw new IllegalArgumentException("an uncertainty is a finite number, 0 or above");
    }
  }

  /** One that draws straight lines and compensates ideally. */
  public Calibrator(int charge, SlopeLimits limits) {
    this(charge, limits, new LowEnd.Straight(), Compensation.ideal(), 0);
  }

  /**
   * Judges one standard or more.
   *
   * @param points the standards, in the order read
   * @param lastAccepted the last accepted curve whose slope was once fitted; a curve on the ideal
   *     slope is not one: without it, the ideal slope is taken anew and said to be so
   */
  public CalibrationOutcome judge(
      List<StandardPoint> points, Optional<ResponseCurve> lastAccepted) {
    if (points.isEmpty()) {
      throw new IllegalArgumentException("a calibration needs a standard");
    }
    return points.size() == 1 ? offset(points.get(0), lastAccepted) : curve(points);
  }

  private CalibrationOutcome offset(StandardPoint point, Optional<ResponseCurve> lastAccepted) {
    ResponseCurve curve = new OneStandard(this, point).on(lastAccepted);
    List<Reason> reasons =
        lastAccepted.flatMap(last -> verdict().onSlopeTakenOver(last)).stream().toList();
    return new CalibrationOutcome(
        List.of(point),
        List.of(),
        Optional.of(curve),
        OptionalDouble.empty(),
        lastAccepted.isPresent() ? SlopeBasis.LAST_ACCEPTED : SlopeBasis.IDEAL,
        reasons,
        List.of());
  }

  private CalibrationOutcome curve(List<StandardPoint> points) {
    StandardsFit fit = new StandardsFit(this, points);
    if (span(fit.logActivities()) < ALIKE_DECADES) {
      return CalibrationOutcome.refused(points, List.of(SlopeVerdict.alike()));
    }
    if (span(fit.abscissas()) < ALIKE_DECADES) {
      return CalibrationOutcome.refused(points, List.of(SlopeVerdict.alikeByTemperature()));
    }
    return fit.drawn()
        .map(
            drawn ->
                new CalibrationOutcome(
                    points,
                    drawn.fits(),
                    Optional.of(drawn.curve()),
                    drawn.residualMillivolts(),
                    SlopeBasis.FITTED,
                    verdict().onFitted(drawn.curve()).stream().toList(),
                    drawn.remarks()))
        .orElseGet(() -> CalibrationOutcome.refused(points, List.of(SlopeVerdict.flat())));
  }

  private SlopeVerdict verdict() {
    return new SlopeVerdict(charge, limits);
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
}
