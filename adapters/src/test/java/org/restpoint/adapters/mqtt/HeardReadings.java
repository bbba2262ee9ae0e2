package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.stability.reading.Reading;

/** Keeps the readings and troubles of a link, for tests. */
final class HeardReadings implements LinkListener {

  private static final long LIMIT_SECONDS = 30;

  private final BlockingQueue<Reading> readings = new LinkedBlockingQueue<>();
  private final BlockingQueue<LinkTrouble> troubles = new LinkedBlockingQueue<>();
  private volatile boolean full;

  @Override
  public boolean reading(Reading reading) {
    return !full && readings.add(reading);
  }

  @Override
  public void trouble(LinkTrouble trouble) {
    troubles.add(trouble);
  }

  /** From now on no reading is taken. */
  void refuse() {
    full = true;
  }

  Reading nextReading() {
    return next(readings);
  }

  LinkTrouble nextTrouble() {
    return next(troubles);
  }

  /** The next trouble of this kind; others before it are passed over. */
  LinkTrouble nextTrouble(String code) {
    LinkTrouble next = nextTrouble();
    while (!next.code().equals(code)) {
      next = nextTrouble();
    }
    return next;
  }

  boolean noTroubleWaits() {
    return troubles.isEmpty();
  }

  /** A reading is handed over a moment before it is counted. */
  void awaitCounts(Link link, LinkCounts expected) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(LIMIT_SECONDS);
    while (!link.counts().equals(expected) && System.nanoTime() < deadline) {
      Thread.onSpinWait();
    }
    assertThat(link.counts()).isEqualTo(expected);
  }

  private static <T> T next(BlockingQueue<T> from) {
    try {
      @Nullable T next = from.poll(LIMIT_SECONDS, TimeUnit.SECONDS);
      return next == null ? fail("nothing has come within %d s", LIMIT_SECONDS) : next;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
