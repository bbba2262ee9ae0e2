package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.calibration.CalibrationLine;
import org.restpoint.stability.calibration.CalibrationOutcome.SlopeBasis;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.calibration.StandardPoint;

/**
 * What a probe's routine keeps over a restart.
 *
 * @param lastIdMillis time of the id given last, ms since 1970
 * @param lastIdCount how many ids bear that time
 * @param inForce the calibration in force
 * @param round the standards read since the last sample, newest last
 * @param refused why the round does not stand; until it does no sample is read
 * @param samplesSinceStandard samples read since the last standard
 * @param soakUntil until when the electrode soaks
 * @param away whether a stream's electrode is out of the stream
 * @param streamFrom the beginning of the next interval of a stream
 * @param underway the instruction that was being carried out
 */
public record ProbeMemory(
    long lastIdMillis,
    int lastIdCount,
    Optional<InForce> inForce,
    List<StandardPoint> round,
    List<Reason> refused,
    int samplesSinceStandard,
    Optional<Instant> soakUntil,
    boolean away,
    Optional<Instant> streamFrom,
    Optional<String> underway) {

  /** A probe never seen before. */
  public static ProbeMemory blank() {
    return new ProbeMemory(
        Long.MIN_VALUE,
        0,
        Optional.empty(),
        List.of(),
        List.of(),
        0,
        Optional.empty(),
        false,
        Optional.empty(),
        Optional.empty());
  }

  /**
   * A calibration in force.
   *
   * @param id its id
   * @param since when its last standard settled
   * @param line its line
   * @param slopeBasis where its slope comes from
   * @param residualMillivolts residual standard deviation of the standards, from three on
   * @param lowestMolesPerLitre the lowest standard the slope was fitted through, where it was
   *     fitted
   * @param highestMolesPerLitre the highest of them
   */
  public record InForce(
      String id,
      Instant since,
      CalibrationLine line,
      SlopeBasis slopeBasis,
      OptionalDouble residualMillivolts,
      OptionalDouble lowestMolesPerLitre,
      OptionalDouble highestMolesPerLitre) {}
}
