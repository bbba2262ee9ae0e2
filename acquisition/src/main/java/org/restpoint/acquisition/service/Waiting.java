package org.restpoint.acquisition.service;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;
import java.util.PriorityQueue;

/**
 * Inputs that wait until others with an earlier time can no longer be on their way: links whose
 * readings carry a time of their own bring them late. Each waits until its time is a set span past;
 * then they come out in the order of their times, those of one time in the order they came. Used by
 * the engine's thread alone; bounded by what hands over.
 */
final class Waiting {

  /**
   * An input that has waited.
   *
   * @param time its time
   * @param place how many came before it
   * @param input what it is
   */
  record Held(Instant time, long place, Input input) {}

  private final Duration span;
  private final PriorityQueue<Held> held;
  private long places;

  /**
   * Nothing waits.
   *
   * @param span how long after its time an input comes out; 0 for at once and as they came,
   *     whatever their times
   */
  Waiting(Duration span) {
    this.span = span;
    Comparator<Held> asTheyCame = Comparator.comparingLong(Held::place);
    this.held =
        new PriorityQueue<>(
            span.isZero()
                ? asTheyCame
                : Comparator.comparing(Held::time).thenComparing(asTheyCame));
  }

  /** Takes an input that is of a time. */
  void add(Instant time, Input input) {
    held.add(new Held(time, places++, input));
  }

  /** The next that need not wait any more at this time of the clock. */
  Optional<Held> next(Instant clock) {
    Held first = held.peek();
    if (first == null || (!span.isZero() && first.time().plus(span).isAfter(clock))) {
      return Optional.empty();
    }
    return Optional.ofNullable(held.poll());
  }

  /** The next, whether it should still wait or not. */
  Optional<Held> next() {
    return Optional.ofNullable(held.poll());
  }
}
