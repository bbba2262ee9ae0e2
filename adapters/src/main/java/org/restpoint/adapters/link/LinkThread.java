package org.restpoint.adapters.link;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.restpoint.adapters.link.LinkHealth.Condition;

/** The daemon thread of a link. It runs until its work is done or the link is closed. */
public final class LinkThread {

  /** What the thread does. */
  public interface Work {

    /**
     * Reads until there is no more or {@link LinkThread#isClosing()}.
     *
     * @throws InterruptedException when somebody wants the thread to end
     */
    void read() throws InterruptedException;
  }

  private final LinkState state;
  private final Work work;
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Thread thread;

  /**
   * @param name the thread's
   * @param state told as {@link Condition#LOST} when the work ends by an error or an interruption
   */
  public LinkThread(String name, LinkState state, Work work) {
    this.state = state;
    this.work = work;
    this.thread = new Thread(this::run, name);
    this.thread.setDaemon(true);
  }

  /** Begins the work; once, and not after closing. */
  public void start() {
    thread.start();
  }

  private void run() {
    boolean done = false;
    try {
      work.read();
      done = true;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      if (!done) {
        state.become(Condition.LOST, thread.getName() + " has stopped reading");
      }
    }
  }

  /** Whether the link is being closed. */
  public boolean isClosing() {
    return closing.getCount() == 0;
  }

  /**
   * Waits, on this thread.
   *
   * @param nanos how long; not at all when 0 or less
   * @return true, and at once, when the link is being closed
   */
  public boolean pause(long nanos) throws InterruptedException {
    return closing.await(nanos, TimeUnit.NANOSECONDS);
  }

  /**
   * Asks the thread to end and waits for it, unless called on it.
   *
   * @return true when it need not be waited for any more: it has ended or never ran
   */
  public boolean close(Duration patience) {
    closing.countDown();
    if (Thread.currentThread() == thread) {
      return true;
    }
    try {
      thread.join(patience.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return !thread.isAlive();
  }
}
