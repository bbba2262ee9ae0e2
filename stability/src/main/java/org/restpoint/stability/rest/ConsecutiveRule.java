package org.restpoint.stability.rest;

/**
 * So many readings in a row within a tolerance: common practice at the bench, where ten readings
 * alike are waited for.
 *
 * <p>At rest when {@code max − min ≤ w} over the last n readings. The resting potential is their
 * mean. Its standard uncertainty is {@code u = √(s²/n + w²/3)}: the standard deviation of the mean,
 * and a rectangular distribution of half-width w, because the rule cannot see a movement smaller
 * than its tolerance (JCGM 100:2008, 4.3.7).
 *
 * @param readings n, 2 to 100 000
 * @param withinMillivolts w, 0 or above, in mV
 */
public record ConsecutiveRule(int readings, double withinMillivolts) implements RestRule {

  private static final int MOST_READINGS = 100_000;

  public ConsecutiveRule {
    if (readings < 2 || readings > MOST_READINGS) {
      throw new IllegalArgumentException("the rule needs 2 to 100000 readings, not " + readings);
    }
    if (!(withinMillivolts >= 0) || Double.isInfinite(withinMillivolts)) {
      throw new IllegalArgumentException("a tolerance is 0 mV or above, not " + withinMillivolts);
    }
  }

  @Override
  public RestDetector detector() {
    return new ConsecutiveDetector(readings, withinMillivolts);
  }

  @Override
  public String describe() {
    return "consecutive " + readings + " within " + withinMillivolts + " mV";
  }

  @Override
  public double restBandMillivolts() {
    return 3 * withinMillivolts;
  }
}
