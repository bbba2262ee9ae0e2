package org.restpoint.config.station;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.SettleRule.Within;

/**
 * How an electrode is calibrated.
 *
 * @param standards names of the standards it may be given, at least one
 * @param restandardize the standard that is read again between samples, if any
 * @param every how often it is read again
 * @param bracket whether results between two readings of that standard are worked out again with
 *     the offset in between
 * @param slopeEvery after how long without a fitted slope a full calibration is due; empty for
 *     never
 * @param slopePercentLow lowest slope accepted, % of the ideal slope
 * @param slopePercentHigh highest slope accepted, % of the ideal slope
 * @param validFor how long a calibration may be used without a flag
 * @param lowEnd what becomes of the line where the concentration is low
 * @param range between which values a number is given; empty for all
 * @param temperatureWithinKelvin by how much sample and standards may differ in temperature without
 *     a flag, in K, above zero
 * @param stockRelativeUncertainty standard uncertainty, as a share, that is common to all standards
 *     because they were made from one stock solution; 0 to 1
 * @param movedWithin how far a standard may read from what the calibration in force expects
 */
public record Calibrate(
    List<String> standards,
    Optional<String> restandardize,
    Every every,
    boolean bracket,
    Optional<Duration> slopeEvery,
    double slopePercentLow,
    double slopePercentHigh,
    Duration validFor,
    LowEnd lowEnd,
    Optional<ReportableRange> range,
    double temperatureWithinKelvin,
    double stockRelativeUncertainty,
    Within movedWithin) {

  /**
   * About 26 % of a monovalent ion's concentration: several times what an electrode in use moves
   * within a day, a few mV (common practice), and less than a beaker that somebody spilt into.
   */
  public static final Within USUAL_MOVE = new Within.Millivolts(6);

  /** One whose standards may move as usual. */
  public Calibrate(
      List<String> standards,
      Optional<String> restandardize,
      Every every,
      boolean bracket,
      Optional<Duration> slopeEvery,
      double slopePercentLow,
      double slopePercentHigh,
      Duration validFor,
      LowEnd lowEnd,
      Optional<ReportableRange> range,
      double temperatureWithinKelvin,
      double stockRelativeUncertainty) {
    this(
        standards,
        restandardize,
        every,
        bracket,
        slopeEvery,
        slopePercentLow,
        slopePercentHigh,
        validFor,
        lowEnd,
        range,
        temperatureWithinKelvin,
        stockRelativeUncertainty,
        USUAL_MOVE);
  }

  /** Copies the standards and checks that there is one, and the ranges of the numbers. */
  public Calibrate {
    standards = List.copyOf(standards);
    if (standards.isEmpty()) {
      throw new IllegalArgumentException("a calibration needs a standard");
    }
    if (!(0 < slopePercentLow && slopePercentLow < slopePercentHigh)
        || !Double.isFinite(slopePercentHigh)) {
      throw new IllegalArgumentException(
          "slope limits out of order: " + slopePercentLow + ".." + slopePercentHigh);
    }
    if (!(temperatureWithinKelvin > 0) || !Double.isFinite(temperatureWithinKelvin)) {
      throw new IllegalArgumentException(
          "temperatures differ by more than 0 K: " + temperatureWithinKelvin);
    }
    if (!(stockRelativeUncertainty >= 0 && stockRelativeUncertainty <= 1)) {
      throw new IllegalArgumentException("a share is 0 to 1: " + stockRelativeUncertainty);
    }
  }

  /** How often the standard is read again. */
  public sealed interface Every {

    /** Never asked for. */
    record Never() implements Every {}

    /**
     * After so many samples.
     *
     * @param samples 1 for before every sample
     */
    record Samples(int samples) implements Every {

      /** Checks the number. */
      public Samples {
        if (samples < 1) {
          throw new IllegalArgumentException("after so many samples, at least 1: " + samples);
        }
      }
    }

    /**
     * After so long.
     *
     * @param span above zero
     */
    record Span(Duration span) implements Every {}
  }
}
