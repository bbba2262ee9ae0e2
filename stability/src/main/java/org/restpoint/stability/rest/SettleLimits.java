package org.restpoint.stability.rest;

import java.time.Duration;

/**
 * When a decision may come at all.
 *
 * @param notBefore no potential is called at rest earlier than this, 0 or above
 * @param giveUpAfter none is called at rest later than this; longer than {@code notBefore}, 365
 *     days at most
 */
public record SettleLimits(Duration notBefore, Duration giveUpAfter) {

  /** Keeps every deadline within the nanoseconds that a {@code long} counts. */
  private static final Duration LONGEST = Duration.ofDays(365);

  public SettleLimits {
    if (notBefore.isNegative()) {
      throw new IllegalArgumentException("not-before is 0 or above");
    }
    if (giveUpAfter.compareTo(notBefore) <= 0) {
      throw new IllegalArgumentException("give-up-after is longer than not-before");
    }
    if (giveUpAfter.compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException("give-up-after is 365 days at most");
    }
  }
}
