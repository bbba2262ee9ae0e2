package org.restpoint.adapters.serial;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * When to ask, and what. Where several things are asked, one after the other is, evenly over the
 * interval: each is asked once in it. An ask that was missed is not made up for.
 */
final class Asks {

  private long dueNanos;
  private int turn;

  /**
   * @param now nanoseconds of a monotonic clock: the first is asked at once
   */
  Asks(long now) {
    this.dueNanos = now;
  }

  /**
   * What to send now; empty until the next is due.
   *
   * @param polls what is asked, in turn
   * @param every how often each of them is asked
   */
  Optional<String> due(List<String> polls, Duration every, long now) {
    if (polls.isEmpty() || now - dueNanos < 0) {
      return Optional.empty();
    }
    long interval = Math.max(1, every.toNanos() / polls.size());
    dueNanos += interval * ((now - dueNanos) / interval + 1);
    turn = (turn + 1) % polls.size();
    return Optional.of(polls.get((turn + polls.size() - 1) % polls.size()));
  }
}
