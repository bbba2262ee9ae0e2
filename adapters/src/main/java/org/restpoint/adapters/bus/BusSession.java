package org.restpoint.adapters.bus;

import java.time.Duration;
import java.util.List;
import java.util.function.LongSupplier;
import org.restpoint.adapters.link.LinkThread;
import org.restpoint.adapters.wire.Wire;

/** One time that a bus's wire is open: asks whoever is due, and else listens for a loss. */
final class BusSession implements Turn {

  /** What a step came to. */
  enum Step {
    /** Somebody was asked, and the wire is well. */
    WORKED,
    /** Nobody was due. */
    QUIET,
    /** The wire went while somebody was asked. */
    GONE_ASKING,
    /** The wire went while nobody was asked. */
    GONE_IDLE,
    /** Somebody was asked, and the wire is to be opened anew. */
    STALE
  }

  /** A loss is noticed by reading; a read waits a tenth of a second at most. */
  private static final long LISTEN_NANOS = Duration.ofMillis(100).toNanos();

  private static final int READ_BYTES = 1024;

  private final Wire wire;
  private final List<BusLink> asked;
  private final UnaskedBytes unasked;
  private final Runnable works;
  private final LinkThread thread;
  private final LongSupplier nanos;
  private final byte[] bytes = new byte[READ_BYTES];

  /**
   * @param asked the links that are started, which may come and go
   * @param works is run when an ask has shown that the wire works, before what came of it is told
   */
  BusSession(
      Wire wire,
      List<BusLink> asked,
      UnaskedBytes unasked,
      Runnable works,
      LinkThread thread,
      LongSupplier nanos) {
    this.wire = wire;
    this.asked = asked;
    this.unasked = unasked;
    this.works = works;
    this.thread = thread;
    this.nanos = nanos;
  }

  /** Asks whoever has been due longest, or waits a moment when nobody is. */
  Step step() throws InterruptedException {
    BusLink first = null;
    for (BusLink link : asked) {
      first = first == null || link.leftNanos() < first.leftNanos() ? link : first;
    }
    long left = first == null ? LISTEN_NANOS : first.leftNanos();
    return first == null || left > 0 ? listen(left) : ask(first);
  }

  private Step ask(BusLink link) throws InterruptedException {
    Outcome outcome = link.poll(this);
    if (thread.isClosing()) {
      return Step.QUIET;
    }
    if (outcome instanceof Outcome.WireGone) {
      return Step.GONE_ASKING;
    }
    works.run();
    if (outcome instanceof Outcome.Stale) {
      link.take(new Outcome.NoAnswer());
      return Step.STALE;
    }
    link.take(outcome);
    return Step.WORKED;
  }

  private Step listen(long left) throws InterruptedException {
    if (left < LISTEN_NANOS) {
      thread.pause(left);
      return Step.QUIET;
    }
    int count = wire.read(bytes);
    if (count > 0) {
      unasked.came(count);
    }
    return count < 0 ? Step.GONE_IDLE : Step.QUIET;
  }

  @Override
  public Wire wire() {
    return wire;
  }

  @Override
  public long nanos() {
    return nanos.getAsLong();
  }

  @Override
  public boolean pause(Duration span) throws InterruptedException {
    return thread.pause(span.toNanos());
  }

  @Override
  public boolean isOver() {
    return thread.isClosing();
  }
}
