package org.restpoint.stability.calibration;

/**
 * The slopes that are accepted, as percentages of the ideal slope.
 *
 * @param lowPercent the lowest, above zero
 * @param highPercent the highest, above the lowest
 */
public record SlopeLimits(double lowPercent, double highPercent) {

  public SlopeLimits {
    if (!(lowPercent > 0) || !(highPercent > lowPercent) || Double.isInfinite(highPercent)) {
      throw new IllegalArgumentException(
          "slope limits are two percentages above zero, the lower first");
    }
  }

  /**
   * Standard deviation of a slope of which no more is known than these limits, % of the ideal
   * slope: a rectangular distribution between them (JCGM 100:2008, 4.3.7).
   */
  double standardDeviationPercent() {
    return (highPercent - lowPercent) / Math.sqrt(12);
  }
}
