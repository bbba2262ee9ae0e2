package org.restpoint.acquisition.event;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.uncertainty.BudgetLine;

/**
 * What came of reading a probe once.
 *
 * @param id stable over redelivery
 * @param revision 1, and one more each time the result is worked out again
 * @param station the station's name
 * @param probe the probe's name
 * @param time when it settled, was given up or refused
 * @param outcome how it ended
 * @param millivolts the resting potential; only when settled or refused after rest
 * @param millivoltsUncertainty its standard uncertainty (k = 1) in mV
 * @param celsius the solution's temperature in °C
 * @param readings readings taken since the beginning
 * @param elapsedSeconds from the beginning to the decision
 * @param rule the rule of rest
 * @param forecast whether the potential is a forecast of the resting value
 * @param responseReadings how many readings had taught how the electrode responds; absent where
 *     nothing is learnt
 * @param latestMillivolts the last reading of an unsettled one, never to be taken for a result
 * @param spreadMillivolts spread of the rule's last readings
 * @param driftMillivoltsPerMinute drift over the rule's last readings
 * @param driftStandardErrorMillivoltsPerMinute its standard error, from three readings on
 * @param calibration the calibration it rests on
 * @param concentration the concentration of the solution the electrode stood in
 * @param reported the same for what was asked
 * @param budget where the uncertainty of the concentration comes from, source by source
 * @param interference what other ions do to it, where the station file names some
 * @param verification what a check showed, where this is one
 * @param preparation how the sample was prepared, where a recipe was named
 * @param sample the sample's record as it was known then
 * @param quality the quality flag: 1 pass, 2 not evaluated, 3 suspect, 4 fail, 9 missing (IOC
 *     54:V3, 2013, as used by QARTOD)
 * @param flags codes that say what to be careful about
 * @param reasons why there is no number
 * @param guidance what the number means, where a table was chosen
 * @param revised when and why it was worked out again, from the second revision on
 * @param caution what the number is not
 */
public record Result(
    String id,
    int revision,
    String station,
    String probe,
    Instant time,
    Outcome outcome,
    OptionalDouble millivolts,
    OptionalDouble millivoltsUncertainty,
    OptionalDouble celsius,
    long readings,
    double elapsedSeconds,
    String rule,
    boolean forecast,
    OptionalLong responseReadings,
    OptionalDouble latestMillivolts,
    OptionalDouble spreadMillivolts,
    OptionalDouble driftMillivoltsPerMinute,
    OptionalDouble driftStandardErrorMillivoltsPerMinute,
    Optional<CalibrationUsed> calibration,
    Optional<Amount> concentration,
    Optional<Reported> reported,
    Optional<List<BudgetLine>> budget,
    Optional<List<Interference>> interference,
    Optional<Verification> verification,
    Optional<Preparation> preparation,
    Optional<ObjectNode> sample,
    int quality,
    List<String> flags,
    List<Reason> reasons,
    Optional<List<Guidance>> guidance,
    Optional<Revised> revised,
    String caution)
    implements Event {

  /** Stands in every result, wherever it reaches people. */
  public static final String CAUTION =
      "A screening result, not a certified laboratory analysis. Local rules, extension advice and"
          + " licensed practice prevail.";

  /** The next revision of it. */
  public Result again(Instant when, String because) {
    return change().again(new Revised(when, because)).done();
  }

  /** The same with what it means, in place of what was said of that before. */
  public Result meaning(Optional<List<Guidance>> tables) {
    return change().guidance(tables).done();
  }

  /** The same with a flag, and suspect where it passed; the same where it has the flag. */
  public Result withFlag(String flag) {
    if (flags.contains(flag)) {
      return this;
    }
    List<String> more = new ArrayList<>(flags);
    more.add(flag);
    return change().flags(more).done();
  }

  /** The same without a flag; a suspect one passes with its last flag gone. */
  public Result withoutFlag(String flag) {
    return change().flags(flags.stream().filter(other -> !other.equals(flag)).toList()).done();
  }

  /** The same with another record of its sample. */
  public Result withSample(ObjectNode record) {
    return change().sample(record).done();
  }

  /** The same, to be changed. */
  public ResultChange change() {
    return new ResultChange(this);
  }

  /** Whether it is of the sample with this number. */
  public boolean isOf(String sampleNumber) {
    return sample
        .map(record -> record.path("number").asText(""))
        .filter(sampleNumber::equals)
        .isPresent();
  }

  /** How a reading ended. */
  public enum Outcome {
    /** At rest and turned into a concentration. */
    @JsonProperty("settled")
    SETTLED,
    /** Never at rest within its time, or no reading came. */
    @JsonProperty("unsettled")
    UNSETTLED,
    /** No number may be given, for the reasons told. */
    @JsonProperty("refused")
    REFUSED
  }

  /**
   * The calibration a result rests on.
   *
   * @param id the calibration's id
   * @param slopeMillivoltsPerDecade slope at the reference temperature, negative for anions
   * @param slopePercent the slope as a percentage of the ideal one
   * @param offsetMillivolts potential at 1 mol/L
   * @param referenceCelsius the temperature the slope belongs to
   * @param residualMillivolts residual standard deviation, from three standards on
   * @param ageSeconds from the last standard to this result
   * @param until the calibration that ends the bracket, where the offset is one between two
   */
  public record CalibrationUsed(
      String id,
      double slopeMillivoltsPerDecade,
      double slopePercent,
      double offsetMillivolts,
      double referenceCelsius,
      OptionalDouble residualMillivolts,
      double ageSeconds,
      Optional<String> until) {}

  /**
   * A concentration with its uncertainty.
   *
   * @param value the concentration
   * @param unit its UCUM unit
   * @param basis {@code as-N} or {@code as-ion}
   * @param uncertainty expanded uncertainty in the same unit
   * @param coverage the coverage factor k, 2
   * @param relation {@code =}, {@code <} (below the detection limit) or {@code >} (above range)
   */
  public record Amount(
      double value, String unit, String basis, double uncertainty, int coverage, String relation) {}

  /**
   * What was asked: the concentration after what was done to the sample has been reckoned back.
   *
   * @param value the amount
   * @param unit its UCUM unit
   * @param basis {@code as-N} or {@code as-ion}
   * @param uncertainty expanded uncertainty in the same unit
   * @param coverage the coverage factor k, 2
   * @param relation {@code =}, {@code <} or {@code >}
   * @param kind of what: {@code solution as measured}, or what a recipe makes of it: {@code water
   *     sample}, {@code dry soil}, {@code air-dry soil}, {@code soil as received}
   */
  public record Reported(
      double value,
      String unit,
      String basis,
      double uncertainty,
      int coverage,
      String relation,
      String kind) {}

  /**
   * What another ion does to a result.
   *
   * @param ion its name
   * @param bias by how much it makes the result too high, in the unit of the concentration; below
   *     zero where too low
   * @param biasPercent the same as a percentage of the result
   * @param corrected whether the result is corrected for it
   */
  public record Interference(
      String ion, double bias, OptionalDouble biasPercent, boolean corrected) {}

  /**
   * A reading that checks other results.
   *
   * @param role what it is
   * @param standard the name of the check standard
   * @param against the id of the sample's own result that a duplicate or spike is compared with
   * @param expected what should have been found, in the unit of the result; absent for a blank
   * @param difference found less expected, in the unit of the result
   * @param recoveryPercent of a check standard found over expected, of a spike what was found of
   *     the amount added, %; absent for pH
   * @param recoveryUncertaintyPercent its expanded uncertainty, k = 2
   * @param relativeDifferencePercent how far two portions differ, % of their mean; absent for pH
   * @param relativeDifferenceUncertaintyPercent its expanded uncertainty, k = 2
   * @param verdict {@code passed}, {@code failed}, {@code uncertain} where a limit lies within the
   *     uncertainty, or {@code not judged}
   * @param text what it showed and what is accepted, for a person
   */
  public record Verification(
      CheckRole role,
      Optional<String> standard,
      Optional<String> against,
      OptionalDouble expected,
      OptionalDouble difference,
      OptionalDouble recoveryPercent,
      OptionalDouble recoveryUncertaintyPercent,
      OptionalDouble relativeDifferencePercent,
      OptionalDouble relativeDifferenceUncertaintyPercent,
      String verdict,
      String text) {}

  /**
   * Why a result was worked out again.
   *
   * @param time when
   * @param because what made it so, in plain words
   */
  public record Revised(Instant time, String because) {}
}
