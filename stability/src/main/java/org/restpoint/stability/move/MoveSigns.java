package org.restpoint.stability.move;

import java.time.Duration;
import java.util.OptionalDouble;

/**
 * By what a move is known. Refuses, with an {@link IllegalArgumentException}, a setting without any
 * sign and figures out of range.
 *
 * @param stepMillivolts a change of level by more than this is a move, above 0 mV; empty where a
 *     change of level alone is none
 * @param airMillivolts out of a solution the potential turns back and forth by at least this, above
 *     0 mV; empty where the meter does not show it
 * @param readings readings in a row that have to lie off the level before anything has happened, 2
 *     to 100: fewer are a spike
 * @param calmMillivolts in a solution again: the readings of the calm span lie within this, above 0
 *     mV
 * @param calmFor that span, above 0, at most 10 min
 */
public record MoveSigns(
    OptionalDouble stepMillivolts,
    OptionalDouble airMillivolts,
    int readings,
    double calmMillivolts,
    Duration calmFor) {

  private static final int MOST_READINGS = 100;
  private static final Duration LONGEST_CALM = Duration.ofMinutes(10);

  public MoveSigns {
    if (stepMillivolts.isEmpty() && airMillivolts.isEmpty()) {
      throw new IllegalArgumentException("a move needs a sign: a step, or how air looks");
    }
    checkAboveZero("the step", stepMillivolts.orElse(1));
    checkAboveZero("the potential in air", airMillivolts.orElse(1));
    checkAboveZero("the calm span", calmMillivolts);
    if (readings < 2 || readings > MOST_READINGS) {
      throw new IllegalArgumentException("expected 2 to 100 readings in a row, not " + readings);
    }
    if (calmFor.isZero() || calmFor.isNegative() || calmFor.compareTo(LONGEST_CALM) > 0) {
      throw new IllegalArgumentException("expected a calm of up to 10 min, not " + calmFor);
    }
  }

  private static void checkAboveZero(String what, double millivolts) {
    if (!(millivolts > 0) || Double.isInfinite(millivolts)) {
      throw new IllegalArgumentException(what + " is not above 0 mV: " + millivolts);
    }
  }

  /** How far readings may lie from the level without being off it: the smaller of the two signs. */
  double bandMillivolts() {
    return Math.min(
        stepMillivolts.orElse(Double.POSITIVE_INFINITY),
        airMillivolts.orElse(Double.POSITIVE_INFINITY));
  }
}
