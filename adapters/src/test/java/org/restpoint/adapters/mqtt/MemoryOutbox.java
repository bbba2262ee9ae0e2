package org.restpoint.adapters.mqtt;

import java.util.Collection;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.restpoint.adapters.outbox.Outbox;
import org.restpoint.adapters.outbox.OutboxMessage;

/** An outbox in memory, for tests. */
final class MemoryOutbox implements Outbox {

  private final NavigableMap<Long, OutboxMessage> rows = new TreeMap<>();
  private long last;

  /** Commits a message; returns its number. */
  synchronized long commit(String topic, boolean retained, String payload) {
    last++;
    rows.put(last, new OutboxMessage(last, topic, retained, payload));
    return last;
  }

  @Override
  public synchronized List<OutboxMessage> unsent(long after, int limit) {
    return rows.tailMap(after, false).values().stream().limit(limit).toList();
  }

  @Override
  public synchronized void remove(Collection<Long> sequences) {
    rows.keySet().removeAll(sequences);
    notifyAll();
  }

  @Override
  public synchronized long waiting() {
    return rows.size();
  }

  /** Waits until everything has been removed; false after 30 s. */
  synchronized boolean awaitEmpty() {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
    try {
      while (!rows.isEmpty() && System.nanoTime() < deadline) {
        wait(1_000);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return rows.isEmpty();
  }
}
