package org.restpoint.adapters.modbus;

import java.util.concurrent.CountDownLatch;

/** Made-up devices at the far end of a wire. */
public interface DevicesOnWire extends AutoCloseable {

  /** How long one question is waited for. */
  int POLL_MILLIS = 100;

  /**
   * Waits a moment for a question and answers it.
   *
   * @return false when none came
   */
  boolean answerOne();

  @Override
  void close();

  /**
   * Answers, on a thread of its own, until what is returned is closed; that closes the wire too.
   */
  default AutoCloseable answering() {
    CountDownLatch closing = new CountDownLatch(1);
    Thread thread =
        new Thread(
            () -> {
              while (closing.getCount() > 0) {
                answerOne();
              }
            },
            "made-up devices");
    thread.setDaemon(true);
    thread.start();
    return () -> {
      closing.countDown();
      thread.join();
      close();
    };
  }
}
