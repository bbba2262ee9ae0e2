package org.restpoint.acquisition.check;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.config.station.Calibrate.Every;
import org.restpoint.stability.quality.BufferCheck;
import org.restpoint.stability.quality.Duplicate;
import org.restpoint.stability.quality.RecoveryLimits;

/**
 * How the checks of a probe are judged and how often each is due.
 *
 * @param every how often, by role; a role that is not there is never due
 * @param standard the standard to ask for when a check standard is due
 * @param recovery the recoveries of a check standard that are accepted
 * @param phWithin how far a buffer may be off, in pH
 * @param blankBelow how much a blank may hold, in the unit of the results; empty where the lowest
 *     value that is told as a number is the limit
 * @param duplicatePercent how far two portions may differ, % of their mean
 * @param duplicatePh the same in pH
 * @param spike what is added to a sample; empty where the station file does not say
 */
public record CheckPlan(
    Map<CheckRole, Every> every,
    Optional<String> standard,
    RecoveryLimits recovery,
    double phWithin,
    OptionalDouble blankBelow,
    double duplicatePercent,
    double duplicatePh,
    Optional<SpikeTerms> spike) {

  /** Two portions read on one day in one laboratory (common practice; no source). */
  public static final double USUAL_DUPLICATE_PH = 0.1;

  /** Copies the rhythm. */
  public CheckPlan {
    every = Map.copyOf(every);
  }

  /** Usual limits, and none is ever due. */
  public static CheckPlan usual() {
    return new CheckPlan(
        Map.of(),
        Optional.empty(),
        RecoveryLimits.OF_A_CHECK_STANDARD,
        BufferCheck.usual().limit(),
        OptionalDouble.empty(),
        Duplicate.USUAL_PERCENT,
        USUAL_DUPLICATE_PH,
        Optional.empty());
  }

  /**
   * What is added to a sample.
   *
   * @param addsMillilitres the volume added, above zero
   * @param concentration what it holds, in the unit of the results, above zero
   * @param intoMillilitres the volume of sample it is added to, above zero
   * @param relativeUncertainty standard uncertainty of the amount added, as a share of it
   * @param limits the recoveries that are accepted
   * @param words the same for a person: {@code 0.5 mL of 1000 mg/L to 50 mL}
   */
  public record SpikeTerms(
      double addsMillilitres,
      double concentration,
      double intoMillilitres,
      double relativeUncertainty,
      RecoveryLimits limits,
      String words) {}
}
