package org.restpoint.acquisition.demo;

import java.io.PrintWriter;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;

/**
 * Prints lines on a thread of its own: where a person stops the terminal to read, the lines wait
 * and whoever tells the story does not.
 */
final class Terminal {

  /** Several times what the whole account has. */
  private static final int MOST_WAITING = 1_000;

  /** No line: it has a line end in it. */
  private static final String END = "\n";

  private final PrintWriter out;
  private final BlockingQueue<String> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
  private final Thread thread = new Thread(this::run, "account");

  Terminal(PrintWriter out) {
    this.out = out;
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  /** Prints a line soon; waits only when very many wait already. */
  void print(String line) {
    try {
      waiting.put(line);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Waits until everything is printed, for as long as the person at the terminal wants it. */
  void finish() throws InterruptedException {
    waiting.put(END);
    thread.join();
  }

  private void run() {
    try {
      for (String line = waiting.take(); !line.equals(END); line = waiting.take()) {
        out.println(line);
        out.flush();
      }
    } catch (InterruptedException e) {
      // Somebody wants this thread to end, and it does.
    }
  }
}
