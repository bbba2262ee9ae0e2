package org.restpoint.adapters.bus;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.LongSupplier;
import org.restpoint.adapters.link.Delivery;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkState;
import org.restpoint.adapters.link.LinkTrouble;

/**
 * One probe on a {@link Bus}. Everything but what {@link Link} promises is for the bus's thread.
 *
 * <p>An ask that brings no answer is not an arrival: it is told, and not counted as received.
 */
final class BusLink implements Link {

  private static final Duration CLOSE_WITHIN = Duration.ofMillis(200);

  private final Bus bus;
  private final PollSettings settings;
  private final Exchange exchange;
  private final LinkListener listener;
  private final InstantSource clock;
  private final LongSupplier nanos;
  private final Delivery delivery;
  private final BusNotices notices;
  private final LinkState state = new LinkState();
  private final ReentrantLock handing = new ReentrantLock();

  private Exchange next;
  private long nextNanos;
  private long beginNanos;
  private long quietSinceNanos;

  BusLink(
      Bus bus,
      PollSettings settings,
      Exchange exchange,
      LinkListener listener,
      InstantSource clock,
      LongSupplier nanos) {
    this.bus = bus;
    this.settings = settings;
    this.exchange = exchange;
    this.listener = listener;
    this.clock = clock;
    this.nanos = nanos;
    this.delivery = new Delivery(settings.device(), listener, nanos);
    this.notices = new BusNotices(settings, this::tell);
    this.next = exchange;
  }

  @Override
  public void start() {
    state.start(settings.device());
    opened();
    bus.start(this);
  }

  @Override
  public LinkHealth check() {
    return state.health();
  }

  @Override
  public LinkCounts counts() {
    return delivery.counts();
  }

  /** Takes no more readings; the wire stays open while other probes are asked over it. */
  @Override
  public void close() {
    state.become(Condition.CLOSED, "");
    try {
      // A reading that is just being handed over is waited for.
      if (handing.tryLock(CLOSE_WITHIN.toMillis(), TimeUnit.MILLISECONDS)) {
        handing.unlock();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    bus.end(this);
  }

  /** The wire is open, or will be: the probe is asked at once. */
  void opened() {
    next = exchange;
    beginNanos = nanos.getAsLong();
    nextNanos = beginNanos;
    if (isAway()) {
      quietSinceNanos = beginNanos;
    }
  }

  private boolean isAway() {
    Condition condition = state.condition();
    return condition == Condition.OPENING || condition == Condition.LOST;
  }

  /** The wire works. */
  void works() {
    if (isAway()) {
      state.become(Condition.READING, "");
    }
  }

  /** The wire is not there. */
  void lost(String why) {
    state.become(Condition.LOST, why);
  }

  /** How long until the probe is to be asked; 0 or less when it is time. */
  long leftNanos() {
    return nextNanos - nanos.getAsLong();
  }

  Outcome poll(Turn turn) throws InterruptedException {
    return next.poll(turn);
  }

  /** What came of asking it. */
  void take(Outcome outcome) {
    if (outcome instanceof Outcome.Later later) {
      next = later.rest();
      nextNanos = nanos.getAsLong() + later.after().toNanos();
      return;
    }
    if (outcome instanceof Outcome.Again again) {
      next = again.next();
      nextNanos = nanos.getAsLong();
      whileOpen(() -> tell(again.rejected()));
      return;
    }
    next = exchange;
    // An ask that was missed is not made up for.
    long every = settings.every().toNanos();
    beginNanos += every * ((nanos.getAsLong() - beginNanos) / every + 1);
    nextNanos = beginNanos;
    whileOpen(() -> tell(outcome));
  }

  private void tell(Outcome outcome) {
    if (outcome instanceof Outcome.Values values) {
      delivery.reading(values.values().at(arrived()));
    } else if (outcome instanceof Outcome.Rejected rejected) {
      arrived();
      delivery.rejected();
      notices.rejected(rejected, nanos.getAsLong());
    } else if (outcome instanceof Outcome.NoAnswer && state.condition() != Condition.SILENT) {
      notices.missed(nanos.getAsLong());
    }
  }

  private Instant arrived() {
    Instant time = clock.instant();
    quietSinceNanos = nanos.getAsLong();
    boolean wasSilent = state.condition() == Condition.SILENT;
    state.arrived(time);
    if (wasSilent) {
      notices.dataBack();
    }
    return time;
  }

  /** Tells what has fallen due, and a long silence. */
  void watch() {
    whileOpen(
        () -> {
          notices.due(nanos.getAsLong());
          delivery.due();
          watchSilence();
        });
  }

  private void watchSilence() {
    if (state.condition() == Condition.READING
        && nanos.getAsLong() - quietSinceNanos >= settings.noDataAfter().toNanos()) {
      LinkTrouble silence = notices.noData();
      state.become(Condition.SILENT, silence);
      tell(silence);
    }
  }

  /** Tells whoever reads this probe. */
  void tell(LinkTrouble trouble) {
    listener.trouble(trouble);
  }

  private void whileOpen(Runnable work) {
    handing.lock();
    try {
      if (state.condition() != Condition.CLOSED) {
        work.run();
      }
    } finally {
      handing.unlock();
    }
  }
}
