package org.restpoint.adapters.serial;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.restpoint.adapters.line.LineFraming;
import org.restpoint.adapters.line.LinePattern;
import org.restpoint.adapters.link.Delivery;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkState;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.quantity.Parsed;

/** One time that a port is open: asks, reads lines, and watches for silence. */
final class SerialSession implements LineFraming.Lines {

  private static final int READ_BYTES = 1024;

  /** What outlives a session. */
  record Surroundings(
      SerialSettings settings,
      InstantSource clock,
      LongSupplier nanos,
      LinkListener listener,
      Delivery delivery,
      SerialNotices notices,
      LinkState state) {}

  private final SerialDevice device;
  private final Surroundings around;
  private final LinePattern pattern;
  private final LineFraming framing = new LineFraming();
  private final byte[] bytes = new byte[READ_BYTES];
  private boolean joined;
  private boolean silent;
  private long arrivalNanos;
  private long nextPollNanos;

  SerialSession(SerialDevice device, Surroundings around) {
    this.device = device;
    this.around = around;
    this.pattern = new LinePattern(around.settings().line(), around.settings().meaning());
    this.arrivalNanos = around.nanos().getAsLong();
    framing.skipToTerminator();
  }

  /**
   * Asks if it is time to, waits a moment for bytes and takes what came.
   *
   * @return false when the device is gone
   */
  boolean step() {
    if (joined && !poll()) {
      return false;
    }
    int count = device.read(bytes);
    if (count < 0) {
      return false;
    }
    if (count > 0) {
      framing.accept(bytes, count, this);
    }
    if (!joined) {
      join(count == 0);
    }
    watch();
    around.notices().due(now());
    around.delivery().due();
    return true;
  }

  /** The beginning of a line is known after a quiet moment, or once a terminator was seen. */
  private void join(boolean quiet) {
    if (quiet) {
      framing.reset();
    }
    if (!framing.skipping()) {
      joined = true;
      nextPollNanos = now();
      if (!silent) {
        around.state().become(Condition.READING, "");
      }
    }
  }

  private boolean poll() {
    Optional<String> poll = around.settings().poll();
    long now = now();
    if (poll.isEmpty() || now - nextPollNanos < 0) {
      return true;
    }
    // An ask that was missed is not made up for.
    long every = around.settings().pollEvery().toNanos();
    nextPollNanos += every * ((now - nextPollNanos) / every + 1);
    return device.write(poll.get().getBytes(StandardCharsets.ISO_8859_1));
  }

  private void watch() {
    if (!silent && now() - arrivalNanos >= around.settings().noDataAfter().toNanos()) {
      silent = true;
      LinkTrouble trouble = around.notices().noData(framing.heldBytes() > 0 || framing.skipping());
      around.state().become(Condition.SILENT, trouble);
      around.listener().trouble(trouble);
    }
  }

  @Override
  public void line(String line) {
    Instant time = arrived();
    Parsed parsed = pattern.parse(line);
    if (parsed instanceof Parsed.Values values) {
      around.delivery().reading(values.at(time));
    } else if (parsed instanceof Parsed.Rejected rejected) {
      around.delivery().rejected();
      around.notices().rejected(line, rejected.reason(), now());
    }
  }

  @Override
  public void tooLong() {
    arrived();
    around.delivery().rejected();
    around.notices().tooLong(now());
  }

  private Instant arrived() {
    Instant time = around.clock().instant();
    arrivalNanos = now();
    around.state().arrived(time);
    if (silent) {
      silent = false;
      around.listener().trouble(around.notices().dataBack());
    }
    return time;
  }

  private long now() {
    return around.nanos().getAsLong();
  }
}
