package org.restpoint.stability.rest;

import java.time.Duration;

/**
 * So many readings in a row within a tolerance: common practice at the bench, where ten readings
 * alike are waited for.
 *
 * <p>At rest when {@code max − min ≤ w} over the last n readings, or, where these reach back less
 * than the least span, over all readings of that span and the one before them, which stands for its
 * beginning. With a least span a faster or an uneven sampling interval does not change what the
 * rule means. Before as many readings and as long a span have been seen it is not at rest.
 *
 * <p>The resting potential is their mean. Its standard uncertainty is {@code u = √(s²/n + w²/3)}:
 * the standard deviation of the mean, and a rectangular distribution of half-width w, because the
 * rule cannot see a movement smaller than its tolerance (JCGM 100:2008, 4.3.7). What comes after
 * the window it does not cover: see {@link Drift#creeps}.
 *
 * @param readings n, 2 to 100 000
 * @param tolerance w, in mV or in per cent of the concentration
 * @param leastSpan how far back the window reaches at least, 0 to 1 day; 0 for readings alone
 */
public record ConsecutiveRule(int readings, Tolerance tolerance, Duration leastSpan)
    implements RestRule {

  private static final int MOST_READINGS = 100_000;

  /**
   * Tolerances a potential may move from its rest. A window within w lies within w of its mean; two
   * more leave room for the noise of single readings. Our choice.
   */
  private static final double BAND_TOLERANCES = 3;

  public ConsecutiveRule {
    if (readings < 2 || readings > MOST_READINGS) {
      throw new IllegalArgumentException("the rule needs 2 to 100000 readings, not " + readings);
    }
    Setting.checkSpan(leastSpan);
  }

  /**
   * The rule by count alone.
   *
   * @param readings n, 2 to 100 000
   * @param withinMillivolts w, 0 or above, in mV
   */
  public ConsecutiveRule(int readings, double withinMillivolts) {
    this(readings, new Tolerance.Millivolts(withinMillivolts), Duration.ZERO);
  }

  @Override
  public RestDetector detector(double slopeMillivoltsPerDecade) {
    double within = tolerance.onSlope(slopeMillivoltsPerDecade);
    return leastSpan.isZero()
        ? new ConsecutiveDetector(readings, within)
        : new SpanDetector(readings, within, leastSpan.toNanos());
  }

  @Override
  public String describe() {
    String span = leastSpan.isZero() ? "" : " for " + Setting.seconds(leastSpan);
    return "consecutive " + readings + " within " + tolerance.describe() + span;
  }

  @Override
  public double restBandMillivolts(double slopeMillivoltsPerDecade) {
    return BAND_TOLERANCES * tolerance.onSlope(slopeMillivoltsPerDecade);
  }
}
