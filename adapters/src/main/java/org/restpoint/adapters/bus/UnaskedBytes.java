package org.restpoint.adapters.bus;

import java.time.Duration;
import java.util.function.Consumer;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.link.Recurrence;

/** Counts what comes over a wire while nobody is asked, and tells it: at most once a minute. */
final class UnaskedBytes {

  private static final Duration ONCE_IN = Duration.ofMinutes(1);

  private final String wire;
  private final Consumer<LinkTrouble> teller;
  private final Recurrence bursts = new Recurrence(ONCE_IN);
  private long bytes;

  UnaskedBytes(String wire, Consumer<LinkTrouble> teller) {
    this.wire = wire;
    this.teller = teller;
  }

  /** So many have come and are passed over. */
  void came(int count) {
    bytes += count;
    bursts.held();
  }

  /** Tells what has fallen due. */
  void due(long nanos) {
    if (bursts.due(nanos) > 0) {
      teller.accept(
          new LinkTrouble(
              "unasked-bytes",
              "%d %s came over %s that nobody had asked for"
                  .formatted(bytes, bytes == 1 ? "byte" : "bytes", wire),
              "Look for a device that answers later than it is waited for, another program that"
                  + " asks on the same wire, and noise (wiring, termination, speed)"));
      bytes = 0;
    }
  }
}
