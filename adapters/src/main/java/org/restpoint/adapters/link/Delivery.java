package org.restpoint.adapters.link;

import java.time.Duration;
import java.util.function.LongSupplier;
import org.restpoint.stability.reading.Reading;

/**
 * Hands a link's readings over, counts everything that arrives, and tells of readings that found
 * the hand-over full: the first at once, later ones at most once a minute with how many they were.
 *
 * <p>Counting is safe on any thread; what is told is told on the thread that calls.
 */
public final class Delivery {

  private static final Duration ONCE_IN = Duration.ofMinutes(1);

  private final String source;
  private final LinkListener listener;
  private final LongSupplier nanos;
  private final LinkTally tally = new LinkTally();
  private final Recurrence drops = new Recurrence(ONCE_IN);

  /**
   * @param source what is read, such as {@code serial port /dev/ttyUSB0}, for the texts
   * @param nanos a monotonic clock in nanoseconds
   */
  public Delivery(String source, LinkListener listener, LongSupplier nanos) {
    this.source = source;
    this.listener = listener;
    this.nanos = nanos;
  }

  /** Hands a reading over and counts it. */
  public void reading(Reading reading) {
    boolean taken = listener.reading(reading);
    tally.offered(taken);
    if (!taken) {
      tellDrops(drops.happened(nanos.getAsLong()));
    }
  }

  /** Counts an arrival that is not a reading. */
  public void rejected() {
    tally.rejected();
  }

  /** Counts an arrival that was lost on the way here; {@link #due()} tells of it. */
  public void dropped() {
    tally.offered(false);
    drops.held();
  }

  /** Tells what was held back and has fallen due. */
  public void due() {
    tellDrops(drops.due(nanos.getAsLong()));
  }

  /** All counts at one moment. */
  public LinkCounts counts() {
    return tally.counts();
  }

  private void tellDrops(long count) {
    if (count > 0) {
      listener.trouble(
          new LinkTrouble(
              "hand-over-full",
              count == 1
                  ? "a reading of %s was dropped: the hand-over is full".formatted(source)
                  : "%d more readings of %s were dropped: the hand-over is full"
                      .formatted(count, source),
              "Look in the log for what holds the service up, or let the device send less often"));
    }
  }
}
