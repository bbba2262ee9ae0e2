package org.restpoint.stability.suspicion;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * What is known of a standard that reads off; each may be missing.
 *
 * @param moved how far it read beside the calibration in force
 * @param rested how it came to rest
 * @param usualSeconds how long it usually takes, s
 * @param usualSpreadMillivolts its usual spread, mV
 * @param circumstances what is known of the electrode's day
 * @param slopePercents slopes of the last accepted calibrations that drew one, % of the ideal
 *     slope, oldest first
 * @param warmth its temperature beside the calibration's
 * @param daysToExpiry days until it expires; below 0 since it has expired
 */
public record Clues(
    Optional<Moved> moved,
    Optional<HowItRested> rested,
    OptionalDouble usualSeconds,
    OptionalDouble usualSpreadMillivolts,
    Circumstances circumstances,
    List<Double> slopePercents,
    Optional<Warmth> warmth,
    OptionalLong daysToExpiry) {

  public Clues {
    slopePercents = List.copyOf(slopePercents);
  }

  /**
   * A standard's temperature.
   *
   * @param celsius its temperature, °C
   * @param referenceCelsius that of the calibration in force, °C
   * @param withinKelvin by how much they may differ, K
   * @param movedAtReferenceMillivolts how far it would have moved if it had the calibration's
   *     temperature, mV
   */
  public record Warmth(
      double celsius,
      double referenceCelsius,
      double withinKelvin,
      double movedAtReferenceMillivolts) {}
}
