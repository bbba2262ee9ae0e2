package org.restpoint.adapters.bus;

import java.nio.charset.StandardCharsets;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.wire.Wire;
import org.restpoint.adapters.wire.WireSource;

/** A wire in memory: the test is the devices at its other end. */
final class FakeWire implements WireSource {

  static final LinkTrouble ABSENT = new LinkTrouble("port-absent", "the wire is absent", "Plug in");
  static final LinkTrouble BUSY = new LinkTrouble("port-busy", "the wire is busy", "Close it");

  /** What is asked, in order. */
  final BlockingQueue<String> asks = new LinkedBlockingQueue<>();

  /** How often somebody has tried to open it. */
  final AtomicInteger attempts = new AtomicInteger();

  private final BlockingQueue<byte[]> sent = new LinkedBlockingQueue<>();
  private volatile Attempt.@Nullable Refused refusal;
  private volatile boolean open;
  private volatile Runnable farewell = () -> {};

  /** From now on it cannot be opened, and is lost when it is open. */
  void unplug() {
    refuse(new Attempt.Refused(ABSENT, true));
  }

  /** From now on it cannot be opened for this reason, and is lost when it is open. */
  void refuse(Attempt.Refused why) {
    refusal = why;
    open = false;
  }

  /** It is there again. */
  void plug() {
    sent.clear();
    asks.clear();
    refusal = null;
  }

  /** Ends the connection; it can be opened again at once. */
  void drop() {
    open = false;
  }

  /** The other end sends this. */
  void send(String text) {
    sent.add(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  /** Whether somebody has it open. */
  boolean isOpen() {
    return open;
  }

  /** What it asked to be run when the process ends. */
  Runnable farewell() {
    return farewell;
  }

  @Override
  public String name() {
    return "the made-up wire";
  }

  @Override
  public Attempt open(Runnable atTheEnd) {
    attempts.incrementAndGet();
    farewell = atTheEnd;
    Attempt.Refused now = refusal;
    if (now != null) {
      return now;
    }
    open = true;
    return new Attempt.Opened(new End());
  }

  @Override
  public LinkTrouble lost() {
    return new LinkTrouble("port-lost", "the wire was lost", "Plug in again");
  }

  @Override
  public LinkTrouble back() {
    return new LinkTrouble("port-back", "the wire is back", "");
  }

  private final class End implements Wire {

    @Override
    public int read(byte[] into) {
      byte[] next = null;
      try {
        next = sent.poll(5, TimeUnit.MILLISECONDS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      if (!open) {
        return -1;
      }
      if (next == null) {
        return 0;
      }
      System.arraycopy(next, 0, into, 0, next.length);
      return next.length;
    }

    @Override
    public boolean write(byte[] bytes) {
      return open && asks.add(new String(bytes, StandardCharsets.ISO_8859_1));
    }

    @Override
    public void discardInput() {
      sent.clear();
    }

    @Override
    public void close() {
      open = false;
    }
  }
}
