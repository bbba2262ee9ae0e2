package org.restpoint.stability.calibration;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What came of reading one or more standards.
 *
 * @param points the standards, in the order read
 * @param line the line, where one can be drawn; of a refused calibration it only tells what was
 *     seen
 * @param residualMillivolts residual standard deviation of the points about the line, from three
 *     points on
 * @param basis where the slope comes from
 * @param reasons why it was refused; empty when accepted
 */
public record CalibrationOutcome(
    List<StandardPoint> points,
    Optional<CalibrationLine> line,
    OptionalDouble residualMillivolts,
    SlopeBasis basis,
    List<Reason> reasons) {

  /** Where a slope comes from. */
  public enum SlopeBasis {
    /** Fitted through two standards or more. */
    FITTED,
    /** One standard; the slope is that of the last accepted calibration. */
    LAST_ACCEPTED,
    /** One standard and no earlier calibration: the slope is the ideal one. */
    IDEAL
  }

  public CalibrationOutcome {
    points = List.copyOf(points);
    reasons = List.copyOf(reasons);
    if (reasons.isEmpty() && line.isEmpty()) {
      throw new IllegalArgumentException("an accepted calibration has a line");
    }
  }

  /** Whether the line may be used. */
  public boolean accepted() {
    return reasons.isEmpty();
  }
}
