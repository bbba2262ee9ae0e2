package org.restpoint.adapters.simulated;

import java.time.Duration;

/**
 * What a simulated electrode is like. Refuses, with an {@link IllegalArgumentException}, a charge
 * of 0, a time constant that is not above 0, a negative noise, numbers that are not finite, and
 * decimals outside 0 to 6.
 *
 * @param slopePercent its slope, % of the ideal slope
 * @param offsetMillivolts its potential at 1 mol/L, in mV, at every temperature
 * @param charge charge number of the ion, such as −1 for nitrate
 * @param timeConstant how fast the film before the membrane takes on a new solution
 * @param noiseMillivolts standard deviation of white noise, in mV
 * @param creepMillivoltsPerHour how fast its offset creeps
 * @param seed seed of the noise; the same seed gives the same readings
 * @param millivoltDecimals decimals of the instrument's mV
 * @param celsiusDecimals decimals of the instrument's °C
 */
public record ElectrodeTraits(
    double slopePercent,
    double offsetMillivolts,
    int charge,
    Duration timeConstant,
    double noiseMillivolts,
    double creepMillivoltsPerHour,
    long seed,
    int millivoltDecimals,
    int celsiusDecimals) {

  private static final int MOST_DECIMALS = 6;

  public ElectrodeTraits {
    if (charge == 0) {
      throw new IllegalArgumentException("an ion has a charge other than 0");
    }
    if (timeConstant.isNegative() || timeConstant.isZero()) {
      throw new IllegalArgumentException("the time constant is not above 0");
    }
    if (!Double.isFinite(slopePercent)
        || !Double.isFinite(offsetMillivolts)
        || !Double.isFinite(creepMillivoltsPerHour)) {
      throw new IllegalArgumentException("slope, offset and creep are finite numbers");
    }
    if (!(noiseMillivolts >= 0) || noiseMillivolts == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException("the noise is 0 or above and finite");
    }
    if (millivoltDecimals < 0
        || millivoltDecimals > MOST_DECIMALS
        || celsiusDecimals < 0
        || celsiusDecimals > MOST_DECIMALS) {
      throw new IllegalArgumentException("decimals are 0 to " + MOST_DECIMALS);
    }
  }

  /** An electrode without creep on an instrument that shows 0.01 mV and 0.1 °C. */
  public static ElectrodeTraits of(
      double slopePercent,
      double offsetMillivolts,
      int charge,
      Duration timeConstant,
      double noiseMillivolts,
      long seed) {
    return new ElectrodeTraits(
        slopePercent, offsetMillivolts, charge, timeConstant, noiseMillivolts, 0.0, seed, 2, 1);
  }
}
