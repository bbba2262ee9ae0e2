package org.restpoint.adapters.recording;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;

/**
 * Holds the times of a growing file against the clock, and knows up to when rows were read before
 * the file was written anew.
 */
final class NearClock {

  private final InstantSource clock;
  private final long withinMillis;
  private long latest = Long.MIN_VALUE;
  private boolean again;

  NearClock(InstantSource clock, Duration within) {
    this.clock = clock;
    this.withinMillis = within.toMillis();
  }

  /** A reading of this time was handed over. */
  void reached(long millis) {
    latest = millis;
    again = false;
  }

  /** The file is read from its beginning again. */
  void beginAgain() {
    again = true;
  }

  /** Whether a row of this time was read before. */
  boolean wasRead(long millis) {
    return again && millis <= latest;
  }

  /** Whether it is near enough to the clock. */
  boolean isNear(long millis) {
    long off = millis - clock.millis();
    return -withinMillis <= off && off <= withinMillis;
  }

  /** How far it is off, a clause. */
  String off(long millis) {
    Duration off = Duration.between(clock.instant(), Instant.ofEpochMilli(millis));
    return "the time %s is %d s %s the clock, more than %d s"
        .formatted(
            Instant.ofEpochMilli(millis),
            off.abs().toSeconds(),
            off.isNegative() ? "behind" : "ahead of",
            withinMillis / 1_000);
  }
}
