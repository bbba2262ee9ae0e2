package org.restpoint.adapters.simulated;

import java.time.Duration;

/**
 * What a simulated electrode is like. Refuses, with an {@link IllegalArgumentException}, a charge
 * of 0 and numbers that are not finite.
 *
 * @param slopePercent its slope, % of the ideal slope
 * @param offsetMillivolts its potential at 1 mol/L, in mV, at every temperature
 * @param charge charge number of the ion, such as −1 for nitrate
 * @param response how it comes to rest
 * @param noise its noise
 * @param creepMillivoltsPerHour how fast its offset creeps, from the start on
 * @param seed seed of the noise and of its faults; the same seed gives the same readings
 * @param display how finely the instrument shows
 */
public record ElectrodeTraits(
    double slopePercent,
    double offsetMillivolts,
    int charge,
    ResponseModel response,
    Noise noise,
    double creepMillivoltsPerHour,
    long seed,
    Display display) {

  public ElectrodeTraits {
    if (charge == 0) {
      throw new IllegalArgumentException("an ion has a charge other than 0");
    }
    if (!Double.isFinite(slopePercent)
        || !Double.isFinite(offsetMillivolts)
        || !Double.isFinite(creepMillivoltsPerHour)) {
      throw new IllegalArgumentException("slope, offset and creep are finite numbers");
    }
  }

  /** An electrode with film diffusion and white noise, without creep, on a usual display. */
  public static ElectrodeTraits of(
      double slopePercent,
      double offsetMillivolts,
      int charge,
      Duration timeConstant,
      double noiseMillivolts,
      long seed) {
    return new ElectrodeTraits(
        slopePercent,
        offsetMillivolts,
        charge,
        new ResponseModel.FilmDiffusion(timeConstant),
        Noise.white(noiseMillivolts),
        0.0,
        seed,
        Display.USUAL);
  }
}
