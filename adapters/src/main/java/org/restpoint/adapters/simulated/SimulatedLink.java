package org.restpoint.adapters.simulated;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.concurrent.TimeUnit;
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
 * Sends what a simulated electrode or thermometer reads, on a thread of its own. The readings are
 * stamped start, start + interval, start + 2 · interval, … and sent as many times faster as the
 * speed says: with a speed other than 1 the stamps leave the clock. Visits move the electrode when
 * it is their time, faults come and go with the readings, and {@link #immerse} moves it by hand,
 * from any thread.
 */
public final class SimulatedLink implements Link {

  private static final Duration CLOSE_WITHIN = Duration.ofSeconds(2);
  private static final long SHORTEST_WAIT_NANOS = TimeUnit.MILLISECONDS.toNanos(1);

  private final SimulatedSettings settings;
  private final String name;
  private final InstantSource clock;
  private final LongSupplier nanos;
  private final Delivery delivery;
  private final LinkState state = new LinkState();
  private final SimulatedLine line;
  private final LinkThread thread;
  private final Object bench = new Object();
  private @Nullable SimulatedProbe probe;
  private Instant now = Instant.EPOCH;

  /**
   * A link to a simulated probe; starts nothing.
   *
   * @param clock says when the start is
   * @param nanos paces the readings, such as {@code System::nanoTime}
   */
  public SimulatedLink(
      SimulatedSettings settings, LinkListener listener, InstantSource clock, LongSupplier nanos) {
    this.settings = settings;
    this.name = settings.subject().name();
    this.clock = clock;
    this.nanos = nanos;
    this.delivery = new Delivery(name, listener, nanos);
    this.line = new SimulatedLine(name, settings.noDataAfter(), state, listener);
    this.thread = new LinkThread(name, state, this::run);
  }

  @Override
  public void start() {
    state.start(name);
    synchronized (bench) {
      now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
      probe = probe(settings.subject(), now);
    }
    thread.start();
  }

  private static SimulatedProbe probe(Subject subject, Instant start) {
    if (subject instanceof Subject.Electrode electrode) {
      Beaker first = electrode.visits().get(0).beaker();
      return new SimulatedElectrode(electrode.traits(), first, electrode.swing(), start);
    }
    return new SimulatedThermometer((Subject.Thermometer) subject, start);
  }

  /**
   * Moves the electrode to another beaker, at the simulated time that is reached. The next visit
   * moves it on.
   *
   * @return that time
   * @throws IllegalStateException before the start, and where there is no electrode
   */
  public Instant immerse(Beaker beaker) {
    synchronized (bench) {
      if (!(started() instanceof SimulatedElectrode electrode)) {
        throw new IllegalStateException(name + " is in no beaker");
      }
      electrode.immerse(now, beaker);
      return now;
    }
  }

  /**
   * The simulated time that is reached: no reading has a later one, whether it was sent or not.
   *
   * @throws IllegalStateException before the start
   */
  public Instant simulatedTime() {
    synchronized (bench) {
      started();
      return now;
    }
  }

  private SimulatedProbe started() {
    if (probe == null) {
      throw new IllegalStateException(name + " is not started");
    }
    return probe;
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
    Instant start = simulatedTime();
    long startNanos = nanos.getAsLong();
    Itinerary itinerary = new Itinerary(settings.subject().visits());
    for (long k = 0; isTimeFor((double) k, startNanos); k++) {
      Duration elapsed = settings.interval().multipliedBy(k);
      itinerary.until(elapsed, (when, beaker) -> move(start.plus(when), beaker));
      Disturbance there = Disturbance.of(settings.faults(), elapsed);
      Reading reading = read(start.plus(elapsed), there, false);
      if (there.unplugged()) {
        line.unplugged();
      } else {
        line.pluggedIn(elapsed);
        if (there.silent()) {
          line.isSilent(elapsed);
        } else {
          send(reading, elapsed);
          flood(start, startNanos, k, there);
        }
      }
      delivery.due();
    }
  }

  /** The readings between this one and the next, where there are any. */
  private void flood(Instant start, long startNanos, long k, Disturbance there)
      throws InterruptedException {
    Duration interval = settings.interval();
    for (int i = 1; i < there.readings(); i++) {
      if (!isTimeFor(k + (double) i / there.readings(), startNanos)) {
        return;
      }
      long millis = interval.toMillis() * i / there.readings();
      Duration elapsed = interval.multipliedBy(k).plusMillis(millis);
      send(read(start.plus(elapsed), there, true), elapsed);
    }
  }

  /**
   * Waits until a reading is due.
   *
   * @return false when the link is being closed
   */
  private boolean isTimeFor(double reading, long startNanos) throws InterruptedException {
    long due =
        startNanos + Math.round(reading * (settings.interval().toNanos() / settings.speed()));
    long left;
    do {
      left = due - nanos.getAsLong();
      if (thread.pause(left > 0 ? Math.max(left, SHORTEST_WAIT_NANOS) : 0)) {
        return false;
      }
    } while (left > 0);
    return true;
  }

  private void move(Instant time, Beaker beaker) {
    synchronized (bench) {
      if (started() instanceof SimulatedElectrode electrode) {
        electrode.immerse(time, beaker);
      }
    }
  }

  private Reading read(Instant time, Disturbance there, boolean extra) {
    synchronized (bench) {
      now = time;
      return extra
          ? started().extraReading(time, there.electrode())
          : started().reading(time, there.electrode());
    }
  }

  private void send(Reading reading, Duration elapsed) {
    line.sends(clock.instant(), elapsed);
    delivery.reading(reading);
  }
}
