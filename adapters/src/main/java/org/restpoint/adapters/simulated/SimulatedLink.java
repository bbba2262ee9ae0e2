package org.restpoint.adapters.simulated;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.Delivery;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkState;
import org.restpoint.adapters.link.LinkThread;
import org.restpoint.stability.reading.Reading;

/**
 * Sends what a simulated electrode reads, on a thread of its own. The readings are stamped start,
 * start + interval, start + 2 · interval, … and sent as many times faster as the speed says: with a
 * speed other than 1 the stamps leave the clock. {@link #immerse} moves the electrode, from any
 * thread.
 */
public final class SimulatedLink implements Link {

  private static final Duration CLOSE_WITHIN = Duration.ofSeconds(2);
  private static final String NAME = "the simulated electrode";

  private final SimulatedSettings settings;
  private final InstantSource clock;
  private final LongSupplier nanos;
  private final Delivery delivery;
  private final LinkState state = new LinkState();
  private final LinkThread thread;
  private final Object bench = new Object();
  private @Nullable SimulatedElectrode electrode;
  private Instant now = Instant.EPOCH;

  /**
   * A link to a simulated electrode; starts nothing.
   *
   * @param clock says when the start is
   * @param nanos paces the readings, such as {@code System::nanoTime}
   */
  public SimulatedLink(
      SimulatedSettings settings, LinkListener listener, InstantSource clock, LongSupplier nanos) {
    this.settings = settings;
    this.clock = clock;
    this.nanos = nanos;
    this.delivery = new Delivery(NAME, listener, nanos);
    this.thread = new LinkThread(NAME, state, this::run);
  }

  @Override
  public void start() {
    state.start(NAME);
    synchronized (bench) {
      now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
      electrode = new SimulatedElectrode(settings.electrode(), settings.first(), now);
    }
    state.become(Condition.READING, "");
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
        throw new IllegalStateException(NAME + " is not started");
      }
      electrode.immerse(now, beaker);
      return now;
    }
  }

  @Override
  public LinkHealth check() {
    return state.health();
  }

  @Override
  public LinkCounts counts() {
    return delivery.counts();
  }

  @Override
  public void close() {
    thread.close(CLOSE_WITHIN);
    state.become(Condition.CLOSED, "");
  }

  private void run() throws InterruptedException {
    Instant start;
    synchronized (bench) {
      start = now;
    }
    long startNanos = nanos.getAsLong();
    double nanosPerReading = settings.interval().toNanos() / settings.speed();
    for (long k = 0; ; k++) {
      long due = startNanos + Math.round(k * nanosPerReading);
      if (thread.pause(due - nanos.getAsLong())) {
        return;
      }
      Reading reading = read(start.plus(settings.interval().multipliedBy(k)));
      state.arrived(clock.instant());
      delivery.reading(reading);
      delivery.due();
    }
  }

  private Reading read(Instant time) {
    synchronized (bench) {
      if (electrode == null) {
        throw new IllegalStateException(NAME + " is not started");
      }
      now = time;
      return electrode.reading(time);
    }
  }
}
