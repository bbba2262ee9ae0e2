package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.util.HashSet;
import java.util.Set;

/**
 * Which messages have been sent and not yet acknowledged, and since when nothing has been. Written
 * by the publisher's thread, read by any.
 */
final class SendWindow {

  private final int size;
  private final Set<Long> inFlight = new HashSet<>();
  private long published;
  private long acknowledged;
  private long unanswered;
  private long lastProgressNanos;

  SendWindow(int size) {
    this.size = size;
  }

  synchronized int space() {
    return size - inFlight.size();
  }

  synchronized boolean isEmpty() {
    return inFlight.isEmpty();
  }

  synchronized void sent(long sequence, long nowNanos) {
    if (inFlight.isEmpty()) {
      lastProgressNanos = nowNanos;
    }
    if (!inFlight.add(sequence)) {
      throw new IllegalStateException("message " + sequence + " is under way already");
    }
    published++;
  }

  /** Returns false when the message is not under way. */
  synchronized boolean acknowledged(long sequence, long nowNanos) {
    if (!inFlight.remove(sequence)) {
      return false;
    }
    acknowledged++;
    lastProgressNanos = nowNanos;
    return true;
  }

  /** Whether something is under way and nothing has been acknowledged for longer than so long. */
  synchronized boolean isStuck(long nowNanos, Duration limit) {
    return !inFlight.isEmpty() && nowNanos - lastProgressNanos > limit.toNanos();
  }

  /** The connection ended: what was under way will be sent again. */
  synchronized void abandon() {
    unanswered += inFlight.size();
    inFlight.clear();
  }

  synchronized PublisherCounts counts(long transientSent, long transientDropped) {
    return new PublisherCounts(
        published, acknowledged, inFlight.size(), unanswered, transientSent, transientDropped);
  }
}
