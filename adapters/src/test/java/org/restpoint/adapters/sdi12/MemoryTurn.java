package org.restpoint.adapters.sdi12;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import org.restpoint.adapters.bus.Turn;
import org.restpoint.adapters.wire.Wire;

/** A wire in memory to sensors of our own making; each read without bytes takes a while. */
final class MemoryTurn implements Turn, Wire {

  private static final long READ_NANOS = Duration.ofMillis(100).toNanos();

  /** A monotonic clock may begin anywhere, also near its turn. */
  private long nanos = Long.MAX_VALUE - Duration.ofSeconds(2).toNanos();

  private final SimulatedBus bus = new SimulatedBus(this::nanos);
  private byte[] waiting = new byte[0];
  private int pieces = Integer.MAX_VALUE;
  private boolean gone;
  private boolean over;

  SimulatedBus bus() {
    return bus;
  }

  SimulatedSensor sensor(char address, double... values) {
    SimulatedSensor sensor = new SimulatedSensor(address, values);
    bus.add(sensor);
    return sensor;
  }

  void passes(Duration span) {
    nanos += span.toNanos();
  }

  void inPiecesOf(int bytes) {
    pieces = bytes;
  }

  void goes() {
    gone = true;
  }

  void ends() {
    over = true;
  }

  @Override
  public Wire wire() {
    return this;
  }

  @Override
  public long nanos() {
    return nanos;
  }

  @Override
  public boolean pause(Duration span) {
    passes(span);
    return over;
  }

  @Override
  public boolean isOver() {
    return over;
  }

  @Override
  public int read(byte[] into) {
    if (gone) {
      return -1;
    }
    if (waiting.length == 0) {
      waiting = bus.due().getBytes(StandardCharsets.ISO_8859_1);
    }
    if (waiting.length == 0) {
      nanos += READ_NANOS;
      return 0;
    }
    int count = Math.min(Math.min(pieces, into.length), waiting.length);
    System.arraycopy(waiting, 0, into, 0, count);
    waiting = Arrays.copyOfRange(waiting, count, waiting.length);
    return count;
  }

  @Override
  public boolean write(byte[] bytes) {
    bus.take(new String(bytes, StandardCharsets.US_ASCII));
    return !gone;
  }

  @Override
  public void discardInput() {
    waiting = new byte[0];
    bus.due();
  }

  @Override
  public void close() {
    gone = true;
  }
}
