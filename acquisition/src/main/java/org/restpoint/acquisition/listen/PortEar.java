package org.restpoint.acquisition.listen;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import org.restpoint.adapters.guess.Sample;
import org.restpoint.adapters.wire.Wire;

/**
 * Hears what comes over a wire, for a limited time and at most 65,536 bytes of it. Sends nothing
 * unless it is told what to ask.
 */
public final class PortEar {

  private static final int MOST_BYTES = 65_536;
  private static final int READ_BYTES = 1_024;

  /** A sample that grows is looked at so often, and at each pause. */
  private static final long LOOK_NANOS = Duration.ofMillis(250).toNanos();

  private final Wire wire;
  private final Optional<Ask> ask;
  private final BooleanSupplier givenUp;
  private final LongSupplier nanos;
  private final List<byte[]> bursts = new ArrayList<>();
  private final ByteArrayOutputStream burst = new ByteArrayOutputStream();
  private int total;
  private boolean whole;
  private boolean gone;

  /**
   * @param ask what to ask, if anything
   * @param givenUp whether nobody wants to hear any more
   * @param nanos a clock that only runs forward, in nanoseconds
   */
  public PortEar(Wire wire, Optional<Ask> ask, BooleanSupplier givenUp, LongSupplier nanos) {
    this.wire = wire;
    this.ask = ask;
    this.givenUp = givenUp;
    this.nanos = nanos;
  }

  /**
   * What came until the time was over, enough had come, or the device was gone.
   *
   * @param limit how long to hear at most
   * @param enough is shown what has come so far, again and again, and says whether it is enough
   */
  public Sample hear(Duration limit, Predicate<Sample> enough) {
    long began = nanos.getAsLong();
    long asked = began - ask.map(Ask::every).orElse(Duration.ZERO).toNanos();
    long looked = began;
    byte[] bytes = new byte[READ_BYTES];
    boolean ended = false;
    while (!ended && !givenUp.getAsBoolean() && total < MOST_BYTES) {
      long now = nanos.getAsLong();
      if (ask.isPresent() && now - asked >= ask.get().every().toNanos()) {
        asked = now;
        gone = !wire.write(ask.get().text().getBytes(StandardCharsets.US_ASCII));
      }
      int count = wire.read(bytes);
      boolean pause = count == 0 && endBurst();
      if (count > 0) {
        burst.write(bytes, 0, count);
        total += count;
      }
      now = nanos.getAsLong();
      if (pause || (count > 0 && now - looked >= LOOK_NANOS)) {
        looked = now;
        ended |= enough.test(sample());
      }
      gone |= count < 0;
      ended |= gone || now - began >= limit.toNanos();
    }
    return sample();
  }

  /** Whether the device went away while it was heard. */
  public boolean isGone() {
    return gone;
  }

  /** A quiet moment: true where one ends a burst, and not where nothing has come since the last. */
  private boolean endBurst() {
    whole |= total == 0;
    if (burst.size() == 0) {
      return false;
    }
    bursts.add(burst.toByteArray());
    burst.reset();
    return true;
  }

  private Sample sample() {
    List<byte[]> all = new ArrayList<>(bursts);
    all.add(burst.toByteArray());
    return new Sample(all, whole);
  }
}
