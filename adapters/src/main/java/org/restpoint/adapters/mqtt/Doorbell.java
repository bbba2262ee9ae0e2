package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/** Wakes a client's own thread; rings while it is awake are kept as one. */
final class Doorbell {

  private final Semaphore rings = new Semaphore(0);

  /** Wakes the thread that waits, or the next that will. Never blocks. */
  void ring() {
    if (rings.availablePermits() == 0) {
      rings.release();
    }
  }

  /** Waits until it has rung, at most so long; an interrupt ends the wait and stays set. */
  void await(Duration atMost) {
    try {
      if (rings.tryAcquire(Math.max(0, atMost.toNanos()), TimeUnit.NANOSECONDS)) {
        rings.drainPermits();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
