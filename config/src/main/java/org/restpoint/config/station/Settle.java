package org.restpoint.config.station;

import java.time.Duration;

/**
 * When a potential is at rest.
 *
 * @param rule how it is decided
 * @param notBefore no decision earlier than this after the instruction
 * @param giveUpAfter the reading is unsettled when no decision came by then
 */
public record Settle(Rule rule, Duration notBefore, Duration giveUpAfter) {

  /** A rule of rest. */
  public sealed interface Rule {

    /**
     * So many readings in a row within a tolerance.
     *
     * @param readings how many, 2 or more
     * @param withinMillivolts the largest minus the smallest of them, in mV, at most
     */
    record Consecutive(int readings, double withinMillivolts) implements Rule {

      /** Checks the ranges. */
      public Consecutive {
        if (readings < 2) {
          throw new IllegalArgumentException("a rule needs 2 readings or more: " + readings);
        }
        if (!(withinMillivolts > 0) || !Double.isFinite(withinMillivolts)) {
          throw new IllegalArgumentException("a tolerance is above 0 mV: " + withinMillivolts);
        }
      }
    }
  }
}
