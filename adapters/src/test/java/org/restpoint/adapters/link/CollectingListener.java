package org.restpoint.adapters.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import org.restpoint.stability.reading.Reading;

/** Keeps what a link reports, for a test to take. */
public final class CollectingListener implements LinkListener {

  /** Far longer than anything takes, so that only what never comes fails. */
  private static final long PATIENCE_SECONDS = 30;

  private final BlockingQueue<Reading> readings = new LinkedBlockingQueue<>();
  private final BlockingQueue<LinkTrouble> troubles = new LinkedBlockingQueue<>();
  private final AtomicLong taken = new AtomicLong();
  private volatile boolean full;

  /** From now on the hand-over is full, or no longer. */
  public void full(boolean isFull) {
    full = isFull;
  }

  @Override
  public boolean reading(Reading reading) {
    if (full) {
      return false;
    }
    taken.incrementAndGet();
    return readings.add(reading);
  }

  @Override
  public void trouble(LinkTrouble trouble) {
    troubles.add(trouble);
  }

  /** How many readings have been taken in all. */
  public long taken() {
    return taken.get();
  }

  /** The next readings; fails when they do not come. */
  public List<Reading> nextReadings(int count) {
    return Stream.generate(this::nextReading).limit(count).toList();
  }

  /** The next reading; fails when none comes. */
  public Reading nextReading() {
    return next(readings, "a reading");
  }

  /** The next trouble; fails when none comes. */
  public LinkTrouble nextTrouble() {
    return next(troubles, "a trouble");
  }

  /** The next trouble with this code, passing over others; fails when none comes. */
  public LinkTrouble nextTrouble(String code) {
    LinkTrouble trouble = next(troubles, "the trouble " + code);
    while (!trouble.code().equals(code)) {
      trouble = next(troubles, "the trouble " + code);
    }
    return trouble;
  }

  /** The queue of readings that no one has taken. */
  public BlockingQueue<Reading> readings() {
    return readings;
  }

  /** The queue of troubles that no one has taken. */
  public BlockingQueue<LinkTrouble> troubles() {
    return troubles;
  }

  private static <T> T next(BlockingQueue<T> queue, String what) {
    try {
      T next = queue.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
      assertThat(next).as("%s within %d s", what, PATIENCE_SECONDS).isNotNull();
      return next;
    } catch (InterruptedException e) {
      throw new AssertionError("interrupted while waiting for " + what, e);
    }
  }
}
