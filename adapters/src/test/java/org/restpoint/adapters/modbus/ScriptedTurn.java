package org.restpoint.adapters.modbus;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.restpoint.adapters.bus.Turn;
import org.restpoint.adapters.wire.Wire;

/** A wire that says what it is told to, and time that passes while it is read. */
final class ScriptedTurn implements Turn, Wire {

  private static final Duration A_READ = Duration.ofMillis(100);
  private static final Duration A_FULL_READ = Duration.ofMillis(1);

  /** What was sent, in order. */
  final List<byte[]> sent = new ArrayList<>();

  /** How long the line rested, in order. */
  final List<Duration> pauses = new ArrayList<>();

  private final Deque<byte[]> script = new ArrayDeque<>();
  private final List<byte[]> early = new ArrayList<>();
  private boolean gone;
  private boolean flooded;
  private long nanos = Long.MAX_VALUE - Duration.ofMinutes(1).toNanos();

  /** What the next reads give; nothing at all when it is empty. */
  ScriptedTurn reads(byte[]... parts) {
    script.addAll(List.of(parts));
    return this;
  }

  /** What has come before the next ask. */
  void hasHeard(byte[] bytes) {
    early.add(bytes);
  }

  /** From now on each read is full of zeros. */
  void floods() {
    flooded = true;
  }

  void isGone() {
    gone = true;
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
    pauses.add(span);
    nanos += span.toNanos();
    return false;
  }

  @Override
  public boolean isOver() {
    return false;
  }

  @Override
  public int read(byte[] into) {
    if (gone) {
      return -1;
    }
    if (flooded) {
      nanos += A_FULL_READ.toNanos();
      return into.length;
    }
    byte[] next = early.isEmpty() ? script.poll() : early.remove(0);
    if (next == null || next.length == 0) {
      nanos += A_READ.toNanos();
      return 0;
    }
    System.arraycopy(next, 0, into, 0, next.length);
    return next.length;
  }

  @Override
  public boolean write(byte[] bytes) {
    sent.add(bytes);
    return !gone;
  }

  @Override
  public void discardInput() {
    early.clear();
  }

  @Override
  public void close() {
    gone = true;
  }
}
