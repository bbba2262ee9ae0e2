package org.restpoint.acquisition.probe;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.batch.Batch;
import org.restpoint.acquisition.check.CheckMemory;
import org.restpoint.acquisition.day.Day;
import org.restpoint.stability.calibration.CalibrationOutcome.SlopeBasis;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.calibration.ResponseCurve;
import org.restpoint.stability.calibration.StandardPoint;
import org.restpoint.stability.rest.forecast.ResponseHistory;

/**
 * What a probe's routine keeps over a restart.
 *
 * @param lastIdMillis time of the id given last, ms since 1970
 * @param lastIdCount how many ids bear that time
 * @param lastNoticeMillis time of the notice given last, ms since 1970
 * @param lastNoticeCount how many notices bear that time
 * @param analyte the ion that its calibrations are of; empty before the first beginning
 * @param inForce the calibration in force
 * @param round the standards read since the last sample, newest last
 * @param foretold the standards of the round whose potentials are forecasts; absent in what an
 *     earlier version wrote
 * @param refused why the round does not stand; until it does no sample is read
 * @param standardAgain the standard whose reading was refused
 * @param samplesSinceStandard samples read since the last standard
 * @param day where the electrode's day stands; absent in what an earlier version wrote
 * @param away whether a stream's electrode is out of the stream
 * @param stream where its stream stands; empty before the first beginning
 * @param underway the instruction that was being carried out
 * @param response what was learnt of the electrode's response; absent where nothing is learnt
 * @param withholding whether the electrode stands in a private sample
 * @param checks what was checked; absent in what an earlier version wrote
 * @param standards what is known of its standards beside the calibration in force; absent in what
 *     an earlier version wrote
 * @param brackets the results that the next calibration on the same slope works out again; absent
 *     in what an earlier version wrote
 * @param batch the batch that is underway
 */
@JsonIgnoreProperties(ignoreUnknown = true)
public record ProbeMemory(
    long lastIdMillis,
    int lastIdCount,
    long lastNoticeMillis,
    int lastNoticeCount,
    Optional<String> analyte,
    Optional<InForce> inForce,
    List<StandardPoint> round,
    Optional<List<String>> foretold,
    List<Reason> refused,
    Optional<String> standardAgain,
    int samplesSinceStandard,
    Optional<Day> day,
    boolean away,
    Optional<InStream> stream,
    Optional<String> underway,
    Optional<ResponseHistory> response,
    boolean withholding,
    Optional<CheckMemory> checks,
    Optional<StandardsPast> standards,
    Optional<List<Brackets.Open>> brackets,
    Optional<Batch> batch) {

  public ProbeMemory {
    round = List.copyOf(round);
    brackets = brackets.map(List::copyOf);
    foretold = foretold.map(List::copyOf);
    refused = List.copyOf(refused);
  }

  /** A probe never seen before. */
  public static ProbeMemory blank() {
    return new ProbeMemory(
        Long.MIN_VALUE,
        0,
        Long.MIN_VALUE,
        0,
        Optional.empty(),
        Optional.empty(),
        List.of(),
        Optional.empty(),
        List.of(),
        Optional.empty(),
        0,
        Optional.empty(),
        false,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        false,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** The same beside a batch, or none. */
  public ProbeMemory with(Optional<Batch> underwayBatch) {
    return new ProbeMemory(
        lastIdMillis,
        lastIdCount,
        lastNoticeMillis,
        lastNoticeCount,
        analyte,
        inForce,
        round,
        foretold,
        refused,
        standardAgain,
        samplesSinceStandard,
        day,
        away,
        stream,
        underway,
        response,
        withholding,
        checks,
        standards,
        brackets,
        underwayBatch);
  }

  /**
   * A calibration in force.
   *
   * @param id its id
   * @param since when its last standard settled
   * @param curve its response curve
   * @param slopeBasis where its slope comes from
   * @param slopeSince when that slope was fitted; empty for an ideal one, and in what an earlier
   *     version wrote
   * @param residualMillivolts residual standard deviation of the standards, from three on
   * @param lowestMolesPerLitre the lowest standard the slope was fitted through, where it was
   *     fitted
   * @param highestMolesPerLitre the highest of them
   */
  public record InForce(
      String id,
      Instant since,
      ResponseCurve curve,
      SlopeBasis slopeBasis,
      Optional<Instant> slopeSince,
      OptionalDouble residualMillivolts,
      OptionalDouble lowestMolesPerLitre,
      OptionalDouble highestMolesPerLitre) {}

  /**
   * Where a stream stands.
   *
   * @param next the beginning of the first interval without a result; empty where results come at
   *     rest
   * @param restMillivolts where the potential rests
   * @param readingsOutside readings in a row that lay outside the rest band
   * @param gapTold whether a silence that still lasts has been told
   */
  public record InStream(
      Optional<Instant> next, OptionalDouble restMillivolts, int readingsOutside, boolean gapTold) {

    /** The same with results missing from {@code start} on, where intervals are kept. */
    InStream from(Optional<Instant> start) {
      return next.isPresent() && start.isPresent()
          ? new InStream(start, restMillivolts, readingsOutside, gapTold)
          : this;
    }
  }
}
