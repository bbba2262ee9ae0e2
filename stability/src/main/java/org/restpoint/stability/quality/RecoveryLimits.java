package org.restpoint.stability.quality;

import java.util.Locale;

/**
 * The recoveries that are accepted; the limits themselves are. Refuses, with an {@link
 * IllegalArgumentException}, limits that do not hold 100 % between them: a recovery as it should be
 * would fail.
 *
 * @param lowPercent the lowest, 0 to below 100 %
 * @param highPercent the highest, above 100 %
 */
public record RecoveryLimits(double lowPercent, double highPercent) {

  /**
   * Of a check standard: 90 to 110 %, common practice of calibration verification (as in the
   * general chemistry methods of EPA SW-846; from memory).
   */
  public static final RecoveryLimits OF_A_CHECK_STANDARD = new RecoveryLimits(90, 110);

  /**
   * Of a spike: 75 to 125 %, common practice for inorganic analytes (EPA, National Functional
   * Guidelines for Inorganic Data Review; from memory).
   */
  public static final RecoveryLimits OF_A_SPIKE = new RecoveryLimits(75, 125);

  public RecoveryLimits {
    boolean sensible = lowPercent >= 0 && lowPercent < 100 && highPercent > 100;
    if (!sensible || Double.isInfinite(highPercent)) {
      throw new IllegalArgumentException(
          "limits of recovery hold 100 % between them, not " + lowPercent + " to " + highPercent);
    }
  }

  Verdict verdict(double percent, double standardUncertaintyPercent) {
    return Verdict.of(percent, standardUncertaintyPercent, lowPercent, highPercent);
  }

  boolean hold(double percent) {
    return Verdict.within(percent, lowPercent, highPercent);
  }

  String seen(double percent, double standardUncertaintyPercent) {
    return String.format(
        Locale.ROOT,
        "the recovery is %.1f ± %.1f %% (k = 2); accepted are %s to %s %%",
        percent,
        Verdict.COVERAGE * standardUncertaintyPercent,
        lowPercent,
        highPercent);
  }
}
