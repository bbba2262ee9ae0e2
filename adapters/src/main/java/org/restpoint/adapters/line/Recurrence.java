package org.restpoint.adapters.line;

import java.time.Duration;

/**
 * Holds back what happens again and again: the first time is told at once, later times together
 * with how many they were, at most once in a span. Nothing is left untold: what is held back falls
 * {@link #due} when the span is over.
 *
 * <p>Times are nanoseconds of a monotonic clock. Not safe for several threads.
 */
public final class Recurrence {

  private final long spanNanos;
  private long heldBack;
  private boolean toldBefore;
  private long toldAtNanos;

  /**
   * @param span the least time between two tellings
   */
  public Recurrence(Duration span) {
    this.spanNanos = span.toNanos();
  }

  /**
   * It happened once more.
   *
   * @return how many happenings to tell now; 0 while they are held back
   */
  public long happened(long nanos) {
    heldBack++;
    return due(nanos);
  }

  /** How many happenings that were held back are to be told now; 0 for none. */
  public long due(long nanos) {
    if (heldBack == 0 || (toldBefore && nanos - toldAtNanos < spanNanos)) {
      return 0;
    }
    long told = heldBack;
    heldBack = 0;
    toldBefore = true;
    toldAtNanos = nanos;
    return told;
  }
}
