package org.restpoint.stability.suspicion;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;

/**
 * How far a standard may read from what the calibration in force expects.
 *
 * <p>{@code |m| ≤ L}, m the potential found less the expected one; {@code 2·L} after a night
 * without a standard. And beside its own history, where that has eight readings or more of the
 * like: {@code |m − median| ≤ max(L/2, 6·s)}, s their {@code 1.4826·MAD}. A standard that reads
 * otherwise than it ever did is off although the limit would let it pass.
 *
 * <p>Edge results: of a limit itself a standard still passes. Six s and a floor of half the limit
 * leave what is usual alone; among normally distributed movements one in half a billion lies beyond
 * six standard deviations, and a MAD of eight values may be half of the true one.
 *
 * @param millivolts L in mV, above 0
 */
public record MoveLimit(double millivolts) {

  private static final double NIGHT_FACTOR = 2;

  private static final double SCATTERS = 6;

  private static final double SHARE = 0.5;

  /** Keeps what is off by just the limit within it, whatever the last bits. */
  private static final double ROUNDING_MILLIVOLTS = 1e-9;

  public MoveLimit {
    if (!(millivolts > 0) || Double.isInfinite(millivolts)) {
      throw new IllegalArgumentException("a standard may move by more than 0 mV");
    }
  }

  /**
   * What stands against a standard, in words with its figures; empty where it passes.
   *
   * @param movedMillivolts m
   * @param overNight whether no standard had been read for a night
   * @param history how it read before
   */
  public Optional<String> against(
      double movedMillivolts, boolean overNight, StandardHistory history) {
    double limit = overNight ? NIGHT_FACTOR * millivolts : millivolts;
    if (Math.abs(movedMillivolts) > limit + ROUNDING_MILLIVOLTS) {
      return Optional.of(
          String.format(
              Locale.ROOT,
              "it may move by %.1f mV %s",
              limit,
              overNight ? "after a night" : "within a day"));
    }
    return history
        .usualMove(overNight)
        .filter(
            usual ->
                Math.abs(movedMillivolts - usual.median())
                    > Math.max(SHARE * millivolts, SCATTERS * usual.scatter())
                        + ROUNDING_MILLIVOLTS)
        .map(
            usual ->
                String.format(
                    Locale.ROOT,
                    "the last %d times it moved by %.2f mV, give or take %.2f",
                    usual.readings(),
                    usual.median(),
                    usual.scatter()));
  }

  /** Whether standards have moved alike: then it is the electrode that did. */
  public boolean areAlike(double oneMillivolts, double otherMillivolts) {
    return Math.abs(oneMillivolts - otherMillivolts) <= SHARE * millivolts + ROUNDING_MILLIVOLTS;
  }

  /** Whether so long without a standard counts as a night. */
  public static boolean isNight(Duration since) {
    return since.compareTo(StandardHistory.NIGHT) >= 0;
  }
}
