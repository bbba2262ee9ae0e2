package org.restpoint.adapters.recording;

import java.util.Comparator;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;

/**
 * Puts the rows of several probes in one order of time. A row is held back until one comes that is
 * {@link #SPAN_MILLIS} later, so rows of different probes may change places by as much; rows of one
 * time stay as they stand.
 */
final class InTimeOrder {

  /** As much as the service lets links differ when they hand over live. */
  static final long SPAN_MILLIS = 10_000;

  /** Held back at most, so that a million rows of one second do not fill the memory. */
  private static final int MOST_HELD = 65_536;

  private final PriorityQueue<Held> held =
      new PriorityQueue<>(Comparator.comparingLong(Held::millis).thenComparingLong(Held::sequence));
  private long sequence;
  private long latest = Long.MIN_VALUE;
  private long passed = Long.MIN_VALUE;

  /** Whether a row can still be put where it belongs; if so it is held. */
  boolean offer(ProbeReading row) {
    long millis = row.reading().time().toEpochMilli();
    if (millis < passed) {
      return false;
    }
    latest = Math.max(latest, millis);
    held.add(new Held(millis, sequence++, row));
    return true;
  }

  /** The next row whose place is known; null while one before it may still come. */
  @Nullable ProbeReading next() {
    Held first = held.peek();
    boolean known =
        first != null && (latest - first.millis() >= SPAN_MILLIS || held.size() > MOST_HELD);
    return known ? last() : null;
  }

  /** The next row when no more will come; null at the end. */
  @Nullable ProbeReading last() {
    Held first = held.poll();
    if (first == null) {
      return null;
    }
    passed = first.millis();
    return first.row();
  }

  private record Held(long millis, long sequence, ProbeReading row) {}
}
