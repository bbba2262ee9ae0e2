package org.restpoint.acquisition.service;

import java.time.Duration;
import java.time.Instant;

/**
 * The times under which the engine takes things in. They are those of the readings and of the
 * clock, except that they do not go back: not behind time that has passed for the routines already,
 * and not behind what another link handed over a little earlier. A reading after an instruction is
 * at least a millisecond later. Only a clock that is put back by more than ten seconds is followed:
 * the routines then begin again what they were reading, and say so.
 *
 * <p>So the order of the times is the order in which things were taken, and a replay, which has
 * nothing but the times, takes them in the same order. Used by the engine's thread alone.
 */
final class TimeOrder {

  /** A clock that is kept right by a time service moves by less. Our choice. */
  private static final Duration TOLERATED = Duration.ofSeconds(10);

  private Instant earliest = Instant.EPOCH;
  private Instant shown = Instant.EPOCH;

  /** Looks at the clock before something is taken in. */
  void follow(Instant clock) {
    if (clock.plus(TOLERATED).isBefore(shown)) {
      earliest = clock;
      shown = clock;
    } else if (clock.isAfter(shown)) {
      shown = clock;
    }
  }

  /** The time of a reading. */
  Instant ofReading(Instant time) {
    passed(time);
    return earliest;
  }

  /** The time of an instruction. */
  Instant ofInstruction(Instant time) {
    passed(time);
    Instant kept = earliest;
    earliest = kept.plusMillis(1);
    return kept;
  }

  /** Time has passed for the routines up to here. */
  void passed(Instant time) {
    if (time.isAfter(earliest)) {
      earliest = time;
    }
  }
}
