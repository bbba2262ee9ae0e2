package org.restpoint.adapters.recording;

import java.time.Duration;

/** Which time a reading of a growing file is given. */
public sealed interface Stamp {

  /**
   * The one that stands in its row. Refuses, with an {@link IllegalArgumentException}, a span that
   * is not above zero.
   *
   * @param within how far it may be off from the clock, either way; a row beyond is rejected
   */
  record Recorded(Duration within) implements Stamp {

    public Recorded {
      if (within.isZero() || within.isNegative()) {
        throw new IllegalArgumentException("expected a span above zero, found " + within);
      }
    }
  }

  /** The one at which its row was seen; times in the file are not read. */
  record OnArrival() implements Stamp {}
}
