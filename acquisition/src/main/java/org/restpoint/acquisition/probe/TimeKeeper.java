package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/** Notices when the clock is put back: when something comes in that is dated long before. */
final class TimeKeeper {

  /**
   * Readings of several links come a little out of order, and a clock that is kept right moves by
   * less. Our choice.
   */
  private static final Duration TOLERATED = Duration.ofSeconds(10);

  private Instant latest;

  /** Knows the time of the last event before a restart. */
  TimeKeeper(ProbeMemory memory) {
    long millis = Math.max(memory.lastIdMillis(), memory.lastNoticeMillis());
    this.latest = millis == Long.MIN_VALUE ? Instant.MIN : Instant.ofEpochMilli(millis);
  }

  /** Takes note that so much time has passed. */
  void reach(Instant now) {
    latest = now.isAfter(latest) ? now : latest;
  }

  /** Takes note of the time; gives the latest one so far if it was put back from there. */
  Optional<Instant> putBackFrom(Instant now) {
    Instant before = latest;
    boolean back = now.plus(TOLERATED).isBefore(before);
    latest = back || now.isAfter(before) ? now : before;
    return back ? Optional.of(before) : Optional.empty();
  }

  /** A moment to come, as far from {@code now} as it was from {@code before}. */
  static Instant moved(Instant moment, Instant before, Instant now) {
    return now.plus(Duration.between(before, moment));
  }
}
