package org.restpoint.adapters.link;

import java.time.Duration;

/**
 * Holds back what happens again and again: the first time is told at once, later times together
 * with how many they were, at most once in a span. Nothing is left untold: what is held back falls
 * {@link #due} when the span is over.
 *
 * <p>Times are nanoseconds of a monotonic clock. Safe for several threads.
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
  public synchronized long happened(long nanos) {
    held();
    return due(nanos);
  }

  /** It happened once more, where it cannot be told; it falls due as any other. */
  public synchronized void held() {
    heldBack++;
  }

  /** How many happenings that were held back are to be told now; 0 for none. */
  public synchronized long due(long nanos) {
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
