package org.restpoint.acquisition.service;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.restpoint.adapters.link.Link;

/**
 * All links, to be closed side by side: each may take 2 s, and all together may not take longer.
 *
 * @param links the links
 */
record AllLinks(List<Link> links) implements AutoCloseable {

  private static final Duration WITHIN = Duration.ofMillis(2500);

  @Override
  public void close() {
    List<Thread> closing = new ArrayList<>();
    for (Link link : links) {
      Thread thread = new Thread(link::close, "close-link");
      thread.setDaemon(true);
      thread.start();
      closing.add(thread);
    }
    long deadline = System.nanoTime() + WITHIN.toNanos();
    try {
      for (Thread thread : closing) {
        thread.join(Math.max(1, (deadline - System.nanoTime()) / 1_000_000));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
