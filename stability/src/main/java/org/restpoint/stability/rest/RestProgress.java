package org.restpoint.stability.rest;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.rest.forecast.Forecast;

/**
 * What a rule sees while it waits.
 *
 * @param atRest whether the rule holds with the latest reading
 * @param readings readings taken so far
 * @param latestMillivolts the last of them
 * @param spreadMillivolts largest minus smallest in the rule's window
 * @param drift how fast the potential moves over the window; empty with fewer than two instants
 * @param creeping whether the drift, over the next five minutes, leads out of the rule's tolerance
 * @param forecast where the potential is going, from a rule that foretells it and can by now
 * @param members what the rules of a combination see, in its order; empty for a rule by itself
 */
public record RestProgress(
    boolean atRest,
    long readings,
    double latestMillivolts,
    double spreadMillivolts,
    Optional<Drift> drift,
    boolean creeping,
    Optional<Forecast> forecast,
    List<Member> members) {

  public RestProgress {
    members = List.copyOf(members);
  }

  /**
   * One rule of a combination.
   *
   * @param rule its description
   * @param progress what it sees
   */
  public record Member(String rule, RestProgress progress) {}

  /** The drift in mV/min; empty with fewer than two instants. */
  public OptionalDouble driftMillivoltsPerMinute() {
    return drift.isPresent()
        ? OptionalDouble.of(drift.get().millivoltsPerMinute())
        : OptionalDouble.empty();
  }

  /** The drift's standard error in mV/min; empty with fewer than three readings. */
  public OptionalDouble driftStandardErrorMillivoltsPerMinute() {
    return drift.isPresent()
        ? drift.get().standardErrorMillivoltsPerMinute()
        : OptionalDouble.empty();
  }
}
