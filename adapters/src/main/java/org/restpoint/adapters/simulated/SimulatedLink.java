package org.restpoint.adapters.simulated;

import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkTally;
import org.restpoint.stability.reading.Reading;

/**
 * Sends what a simulated electrode reads, on a thread of its own. The readings are stamped start,
 * start + interval, start + 2 · interval, … and sent as many times faster as the speed says: with a
 * speed other than 1 the stamps leave the clock. {@link #immerse} moves the electrode, from any
 * thread.
 */
public final class SimulatedLink implements Link {

  private static final long CLOSE_WITHIN_MILLIS = 2_000;

  private final SimulatedSettings settings;
  private final LinkListener listener;
  private final InstantSource clock;
  private final LongSupplier nanos;
  private final LinkTally tally = new LinkTally();
  private final CountDownLatch closed = new CountDownLatch(1);
  private final Thread thread;
  private final Object bench = new Object();
  private @Nullable SimulatedElectrode electrode;
  private Instant now = Instant.EPOCH;
  private volatile LinkHealth health = new LinkHealth(Condition.NEW, "", Optional.empty());

  /**
   * A link to a simulated electrode; starts nothing.
   *
   * @param clock says when the start is
   * @param nanos paces the readings, such as {@code System::nanoTime}
   */
  public SimulatedLink(
      SimulatedSettings settings, LinkListener listener, InstantSource clock, LongSupplier nanos) {
    this.settings = settings;
    this.listener = listener;
    this.clock = clock;
    this.nanos = nanos;
    this.thread = new Thread(this::run, "simulated electrode");
    thread.setDaemon(true);
  }

  @Override
  public void start() {
    synchronized (bench) {
      now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
      electrode = new SimulatedElectrode(settings.electrode(), settings.first(), now);
    }
    health = new LinkHealth(Condition.READING, "", Optional.empty());
    thread.start();
  }

  /**
   * Moves the electrode to another beaker, at the simulated time of the latest reading.
   *
   * @return that time
   * @throws IllegalStateException before the start
   */
  public Instant immerse(Beaker beaker) {
    synchronized (bench) {
      if (electrode == null) {
        throw new IllegalStateException("the simulated electrode is not started");
      }
      electrode.immerse(now, beaker);
      return now;
    }
  }

  @Override
  public LinkHealth check() {
    return health;
  }

  @Override
  public LinkCounts counts() {
    return tally.counts();
  }

  @Override
  public void close() {
    closed.countDown();
    try {
      if (Thread.currentThread() != thread) {
        thread.join(CLOSE_WITHIN_MILLIS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    health = new LinkHealth(Condition.CLOSED, "", health.lastArrival());
  }

  private void run() {
    Instant start;
    synchronized (bench) {
      start = now;
    }
    long startNanos = nanos.getAsLong();
    double nanosPerReading = settings.interval().toNanos() / settings.speed();
    try {
      for (long k = 0; ; k++) {
        long due = startNanos + Math.round(k * nanosPerReading);
        if (closed.await(due - nanos.getAsLong(), TimeUnit.NANOSECONDS)) {
          return;
        }
        Reading reading = read(start.plus(settings.interval().multipliedBy(k)));
        tally.offered(listener.reading(reading));
        health = new LinkHealth(Condition.READING, "", Optional.of(clock.instant()));
      }
    } catch (InterruptedException e) {
      // Somebody wants this thread to end; it does, as after closing.
      health =
          new LinkHealth(
              Condition.LOST, "the simulated electrode was interrupted", health.lastArrival());
    }
  }

  private Reading read(Instant time) {
    synchronized (bench) {
      if (electrode == null) {
        throw new IllegalStateException("the simulated electrode is not started");
      }
      now = time;
      return electrode.reading(time);
    }
  }
}
