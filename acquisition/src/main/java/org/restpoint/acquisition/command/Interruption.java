package org.restpoint.acquisition.command;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Lets a person end a command with Ctrl-C and still have what it found: while one is open, the end
 * of the process waits for it, two seconds at most.
 */
final class Interruption implements AutoCloseable {

  private static final long PATIENCE_SECONDS = 2;

  private final CountDownLatch done = new CountDownLatch(1);
  private final Thread hook = new Thread(this::end, "interruption");
  private volatile boolean told;

  Interruption() {
    Runtime.getRuntime().addShutdownHook(hook);
  }

  private void end() {
    told = true;
    try {
      if (!done.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        Runtime.getRuntime().halt(ExitStatus.DEFECT);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Whether the person wants an end. */
  boolean isTold() {
    return told;
  }

  /** All is said; the process may end. */
  @Override
  public void close() {
    done.countDown();
    if (!told) {
      try {
        Runtime.getRuntime().removeShutdownHook(hook);
      } catch (IllegalStateException ending) {
        // The process ends just now, and the hook finds its work done.
      }
    }
  }
}
