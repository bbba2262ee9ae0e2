package org.restpoint.adapters.bus;

import java.time.Duration;
import java.time.InstantSource;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkState;
import org.restpoint.adapters.link.LinkThread;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.wire.Wire;
import org.restpoint.adapters.wire.WireSource;
import org.restpoint.adapters.wire.WireSource.Attempt;

/**
 * A wire that several probes share, on one daemon thread named {@code bus on <wire>}. Its links are
 * made before the first is started, which opens the wire; when all are closed the bus is closed
 * with them.
 *
 * <p>Probes are asked one after the other, each at its own interval: whoever has been due longest
 * comes first, so that none is kept waiting for ever. A wire that cannot be opened or was lost is
 * tried again and again, at most a second apart. All its links are lost with it, and the first of
 * those that are started tells it, once.
 */
public final class Bus implements AutoCloseable {

  private static final Duration FIRST_PAUSE = Duration.ofMillis(100);
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(1);
  private static final Duration PATIENT_CLOSE = Duration.ofMillis(1_200);
  private static final Duration FORCED_CLOSE = Duration.ofMillis(400);

  private final WireSource source;
  private final InstantSource clock;
  private final LongSupplier nanos;
  private final LinkThread thread;
  private final WireNews news = new WireNews();
  private final UnaskedBytes unasked;
  private final Set<BusLink> made = ConcurrentHashMap.newKeySet();
  private final List<BusLink> asked = new CopyOnWriteArrayList<>();
  private volatile @Nullable Wire wire;
  private boolean started;

  /**
   * @param source where the wire is had
   * @param clock gives readings their time
   */
  public Bus(WireSource source, InstantSource clock) {
    this(source, clock, System::nanoTime);
  }

  /**
   * @param nanos a monotonic clock in nanoseconds, for silences and intervals: they are not moved
   *     when the time of day is set
   */
  public Bus(WireSource source, InstantSource clock, LongSupplier nanos) {
    this.source = source;
    this.clock = clock;
    this.nanos = nanos;
    this.unasked = new UnaskedBytes(source.name(), this::tell);
    this.thread = new LinkThread("bus on " + source.name(), new LinkState(), this::run);
  }

  /**
   * Prepares the link of one probe; it opens nothing before its start.
   *
   * @param listener is told readings and troubles on the bus's thread
   */
  public Link link(PollSettings settings, Exchange exchange, LinkListener listener) {
    BusLink link = new BusLink(this, settings, exchange, listener, clock, nanos);
    made.add(link);
    return link;
  }

  synchronized void start(BusLink link) {
    asked.add(link);
    if (!started) {
      started = true;
      thread.start();
    }
  }

  void end(BusLink link) {
    asked.remove(link);
    made.remove(link);
    if (made.isEmpty()) {
      close();
    }
  }

  /** Closes the wire and every link, within 2 s. Idempotent. */
  @Override
  public void close() {
    if (thread.isClosing()) {
      return;
    }
    if (!thread.close(PATIENT_CLOSE)) {
      Wire stuck = wire;
      if (stuck != null) {
        stuck.close();
        thread.close(FORCED_CLOSE);
      }
    }
    made.forEach(BusLink::close);
  }

  private void run() throws InterruptedException {
    boolean done = false;
    try {
      Duration pause = FIRST_PAUSE;
      while (!thread.isClosing()) {
        boolean worked = openAndAsk();
        Duration longer = pause.multipliedBy(2);
        pause = worked ? FIRST_PAUSE : longer.compareTo(LONGEST_PAUSE) < 0 ? longer : LONGEST_PAUSE;
        watch();
        thread.pause(pause.toNanos());
      }
      done = true;
    } finally {
      if (!done) {
        lost(source.name() + " is not read any more");
      }
    }
  }

  /** One attempt, and all asking that follows; true when the wire worked at all. */
  private boolean openAndAsk() throws InterruptedException {
    Attempt attempt = source.open(this::close);
    if (attempt instanceof Attempt.Opened opened) {
      try (Wire open = opened.wire()) {
        wire = open;
        return ask(new BusSession(open, asked, unasked, this::works, thread, nanos));
      } finally {
        wire = null;
      }
    }
    refused((Attempt.Refused) attempt);
    return false;
  }

  private boolean ask(BusSession session) throws InterruptedException {
    boolean worked = false;
    asked.forEach(BusLink::opened);
    while (!thread.isClosing()) {
      switch (session.step()) {
        case WORKED -> worked = true;
        case STALE -> {
          return true;
        }
        case QUIET -> {}
        case GONE_ASKING -> {
          if (worked) {
            lost(source.lost().sentences());
            tell(news.lost(source.lost()));
          } else {
            refused(new Attempt.Refused(source.lost(), true));
          }
          return worked;
        }
        case GONE_IDLE -> {
          lost(source.lost().sentences());
          news.lostIdle(source.lost());
          return worked;
        }
      }
      watch();
    }
    return worked;
  }

  private void works() {
    asked.forEach(BusLink::works);
    if (news.works()) {
      tell(source.back());
    }
  }

  private void watch() {
    unasked.due(nanos.getAsLong());
    asked.forEach(BusLink::watch);
  }

  private void refused(Attempt.Refused refused) {
    lost(refused.trouble().sentences());
    news.refused(refused).ifPresent(this::tell);
  }

  private void lost(String why) {
    asked.forEach(link -> link.lost(why));
  }

  private void tell(LinkTrouble trouble) {
    asked.stream().findFirst().ifPresent(link -> link.tell(trouble));
  }
}
