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
   * How far a slope of which no more is known than these limits is from the ideal one, root mean
   * square, in % of it: √[(h³ − l³)/(3(h − l))] with the limits' distances l and h from 100 %, a
   * rectangular distribution between them (JCGM 100:2008, 4.3.7) whose middle is not corrected for
   * (F.2.4.5).
   */
  double uncertaintyOfIdealPercent() {
    double low = lowPercent - 100;
    double high = highPercent - 100;
    return Math.sqrt((low * low + low * high + high * high) / 3);
  }
}
