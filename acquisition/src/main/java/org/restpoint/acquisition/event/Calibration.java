package org.restpoint.acquisition.event;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.restpoint.stability.calibration.Reason;

/**
 * A calibration, accepted or refused, after each standard that was read.
 *
 * @param id stable over redelivery
 * @param revision 1
 * @param station the station's name
 * @param probe the probe's name
 * @param time when the last standard settled or was given up
 * @param verdict whether it is in force
 * @param reasons why it was refused
 * @param points the standards of this round, in the order read
 * @param slopeFrom where the slope comes from: {@code fitted}, {@code last accepted} or {@code
 *     ideal}; absent where no line could be drawn
 * @param slopeMillivoltsPerDecade slope at the reference temperature, negative for anions
 * @param slopePercent the slope as a percentage of the ideal one
 * @param offsetMillivolts potential at 1 mol/L
 * @param slopeStandardError standard error of the slope, mV/decade
 * @param residualMillivolts residual standard deviation, from three standards on
 * @param detectionLimit where the prolonged line crosses the level that the potential tends to;
 *     absent for a straight line
 * @param referenceCelsius the temperature the slope belongs to
 * @param flags codes that say what to be careful about
 * @param remarks the flags that have more to say, in words
 * @param causes why a standard that was refused reads off, the likeliest cause first
 */
public record Calibration(
    String id,
    int revision,
    String station,
    String probe,
    Instant time,
    Verdict verdict,
    List<Reason> reasons,
    List<Point> points,
    Optional<String> slopeFrom,
    OptionalDouble slopeMillivoltsPerDecade,
    OptionalDouble slopePercent,
    OptionalDouble offsetMillivolts,
    OptionalDouble slopeStandardError,
    OptionalDouble residualMillivolts,
    Optional<Limit> detectionLimit,
    OptionalDouble referenceCelsius,
    List<String> flags,
    List<Reason> remarks,
    List<Cause> causes)
    implements Event {

  /** The same with further flags. */
  public Calibration withFlags(List<String> more) {
    return new Calibration(
        id,
        revision,
        station,
        probe,
        time,
        verdict,
        reasons,
        points,
        slopeFrom,
        slopeMillivoltsPerDecade,
        slopePercent,
        offsetMillivolts,
        slopeStandardError,
        residualMillivolts,
        detectionLimit,
        referenceCelsius,
        Stream.concat(flags.stream(), more.stream()).distinct().toList(),
        remarks,
        causes);
  }

  /** Whether a calibration is in force. */
  public enum Verdict {
    /** In force from now on. */
    @JsonProperty("accepted")
    ACCEPTED,
    /** Not to be used. */
    @JsonProperty("refused")
    REFUSED
  }

  /**
   * A standard as it was read.
   *
   * @param standard the standard's name
   * @param value its concentration
   * @param unit the concentration's UCUM unit
   * @param basis {@code as-N} or {@code as-ion}
   * @param millivolts its resting potential
   * @param millivoltsUncertainty standard uncertainty of the potential (k = 1)
   * @param forecast whether the potential is a forecast of the resting value
   * @param celsius its temperature
   * @param time when it came to rest
   * @param residualMillivolts the potential minus the curve's, where there is a curve
   * @param leverage how far the curve follows this standard alone, 0 to 1
   */
  public record Point(
      String standard,
      double value,
      String unit,
      String basis,
      double millivolts,
      double millivoltsUncertainty,
      boolean forecast,
      double celsius,
      Instant time,
      OptionalDouble residualMillivolts,
      OptionalDouble leverage) {}

  /**
   * Why a standard may read off.
   *
   * @param cause its code
   * @param evidence what speaks for it, with its figures
   * @param remedy what to do
   */
  public record Cause(String cause, String evidence, String remedy) {}

  /**
   * A limit of detection.
   *
   * @param value the concentration
   * @param unit its UCUM unit
   * @param basis {@code as-N} or {@code as-ion}
   * @param uncertainty its standard uncertainty (k = 1) in the same unit
   */
  public record Limit(double value, String unit, String basis, double uncertainty) {}
}
