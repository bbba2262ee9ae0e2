package org.restpoint.config.station;

import java.time.Duration;
import java.util.OptionalDouble;

/** How it is known that an electrode was put into the next cup of a batch. */
public sealed interface Moves {

  /** A person or a rig says so. */
  record Told() implements Moves {}

  /**
   * It is seen in the potential.
   *
   * @param stepMillivolts a change of level by more than this is a move, mV; empty where a change
   *     of level alone is none
   * @param outOfSolutionMillivolts out of a solution the potential turns back and forth by at least
   *     this, mV; empty where the meter does not show it
   * @param readings readings in a row that have to lie off the level
   * @param calmMillivolts in a solution again: readings lie within this, mV
   * @param calmFor for so long
   * @param notSeenAfter when it is told that no move was seen
   */
  record ByItself(
      OptionalDouble stepMillivolts,
      OptionalDouble outOfSolutionMillivolts,
      int readings,
      double calmMillivolts,
      Duration calmFor,
      Duration notSeenAfter)
      implements Moves {}
}
