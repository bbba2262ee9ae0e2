package org.restpoint.acquisition.event;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * A potential on its way to rest; at most once a second.
 *
 * @param station the station's name
 * @param probe the probe's name
 * @param time the latest reading's
 * @param readings readings so far
 * @param elapsedSeconds since the beginning
 * @param latestMillivolts the latest reading
 * @param spreadMillivolts spread of the rule's last readings
 * @param driftMillivoltsPerMinute drift over the rule's last readings
 * @param driftStandardErrorMillivoltsPerMinute its standard error, from three readings on
 * @param forecastMillivolts where the potential is going, from a rule that foretells it and can by
 *     now
 * @param forecastUncertaintyMillivolts its standard uncertainty (k = 1)
 * @param responseReadings how many readings taught how the electrode responds; absent where nothing
 *     is learnt
 * @param members what each rule of a combination sees, in its order
 */
public record Progress(
    String station,
    String probe,
    Instant time,
    long readings,
    double elapsedSeconds,
    double latestMillivolts,
    double spreadMillivolts,
    OptionalDouble driftMillivoltsPerMinute,
    OptionalDouble driftStandardErrorMillivoltsPerMinute,
    OptionalDouble forecastMillivolts,
    OptionalDouble forecastUncertaintyMillivolts,
    OptionalLong responseReadings,
    Optional<List<Member>> members)
    implements Event {

  /**
   * One rule of a combination.
   *
   * @param rule the rule with its settings
   * @param atRest whether it holds
   * @param spreadMillivolts spread of its last readings
   * @param driftMillivoltsPerMinute drift over its last readings
   * @param driftStandardErrorMillivoltsPerMinute the drift's standard error
   * @param forecastMillivolts where it sees the potential go, if it foretells and can by now
   * @param forecastUncertaintyMillivolts the forecast's standard uncertainty (k = 1)
   * @param members what its own rules see, where it is a combination
   */
  public record Member(
      String rule,
      boolean atRest,
      double spreadMillivolts,
      OptionalDouble driftMillivoltsPerMinute,
      OptionalDouble driftStandardErrorMillivoltsPerMinute,
      OptionalDouble forecastMillivolts,
      OptionalDouble forecastUncertaintyMillivolts,
      Optional<List<Member>> members) {}
}
