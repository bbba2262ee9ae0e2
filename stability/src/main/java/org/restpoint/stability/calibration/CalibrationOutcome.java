package org.restpoint.stability.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What came of judging a set of standards.
 *
 * @param points the standards, in the order read
 * @param fits what the curve makes of each of them, in the same order; empty where there is no
 *     curve
 * @param curve the response curve; present in an accepted calibration, and in a refused one as far
 *     as one could be drawn, where it only tells what was seen
 * @param residualMillivolts residual standard deviation of the points about the curve, where they
 *     are more than its parameters
 * @param basis where the slope comes from
 * @param reasons why it was refused; empty when accepted
 * @param remarks what to be careful about all the same
 */
public record CalibrationOutcome(
    List<StandardPoint> points,
    List<PointFit> fits,
    Optional<ResponseCurve> curve,
    OptionalDouble residualMillivolts,
    SlopeBasis basis,
    List<Reason> reasons,
    List<Reason> remarks) {

  /** Where a slope comes from. */
  public enum SlopeBasis {
    /** Fitted through two standards or more. */
    FITTED,
    /** One standard; the slope is that of the last accepted calibration. */
    LAST_ACCEPTED,
    /** One standard and no earlier calibration: the slope is the ideal one. */
    IDEAL
  }

  /**
   * What a curve makes of one of its standards.
   *
   * @param residualMillivolts the potential less the curve's
   * @param leverage h, how far the curve follows this standard alone, 0 to 1
   */
  public record PointFit(double residualMillivolts, double leverage) {}

  public CalibrationOutcome {
    points = List.copyOf(points);
    fits = List.copyOf(fits);
    reasons = List.copyOf(reasons);
    remarks = List.copyOf(remarks);
    if (reasons.isEmpty() && curve.isEmpty()) {
      throw new IllegalArgumentException("an accepted calibration has a curve");
    }
    if (!fits.isEmpty() && fits.size() != points.size()) {
      throw new IllegalArgumentException("each standard has one fit");
    }
  }

  /** A calibration of which no curve could be drawn. */
  public static CalibrationOutcome refused(List<StandardPoint> points, List<Reason> reasons) {
    return new CalibrationOutcome(
        points,
        List.of(),
        Optional.empty(),
        OptionalDouble.empty(),
        SlopeBasis.FITTED,
        reasons,
        List.of());
  }

  /** The same refused outcome with a reason in front that explains the others. */
  public CalibrationOutcome explainedBy(Reason reason) {
    List<Reason> all = new ArrayList<>(List.of(reason));
    all.addAll(reasons);
    return new CalibrationOutcome(points, fits, curve, residualMillivolts, basis, all, remarks);
  }

  /** The same with another reason to refuse it, after the others. */
  public CalibrationOutcome refusedAlsoFor(Reason reason) {
    List<Reason> all = new ArrayList<>(reasons);
    all.add(reason);
    return new CalibrationOutcome(points, fits, curve, residualMillivolts, basis, all, remarks);
  }

  /** The same with another remark. */
  public CalibrationOutcome remarkedOn(Reason remark) {
    List<Reason> all = new ArrayList<>(remarks);
    all.add(remark);
    return new CalibrationOutcome(points, fits, curve, residualMillivolts, basis, reasons, all);
  }

  /**
   * The same accepted all the same, with a remark that says so. Throws an {@link
   * IllegalArgumentException} where no curve could be drawn.
   */
  public CalibrationOutcome overridden(Reason remark) {
    List<Reason> all = new ArrayList<>(remarks);
    all.add(remark);
    return new CalibrationOutcome(points, fits, curve, residualMillivolts, basis, List.of(), all);
  }

  /** Whether the curve may be used. */
  public boolean accepted() {
    return reasons.isEmpty();
  }

  /** The detection limit by the bend of the curve; empty for a straight line. */
  public Optional<DetectionLimit> detectionLimit() {
    return curve
        .filter(drawn -> drawn.lowEndMolesPerLitre() > 0)
        .map(
            drawn ->
                new DetectionLimit(
                    drawn.lowEndMolesPerLitre(), drawn.covariance().standardUncertainty(2)));
  }
}
