package org.restpoint.adapters.journal;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Whose rows, from when and how many; whatever is empty does not restrict. Refuses, with an {@link
 * IllegalArgumentException}, a negative limit.
 *
 * @param probe the probe's name
 * @param from the earliest time, included
 * @param to the time before which rows end, itself excluded
 * @param limit how many at most, counted from the earliest
 */
public record SpanQuery(
    Optional<String> probe, Optional<Instant> from, Optional<Instant> to, OptionalInt limit) {

  public SpanQuery {
    if (limit.isPresent() && limit.getAsInt() < 0) {
      throw new IllegalArgumentException("the limit %d is negative".formatted(limit.getAsInt()));
    }
  }

  /** Every row. */
  public static SpanQuery all() {
    return new SpanQuery(Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.empty());
  }

  /** Rows of one probe. */
  public static SpanQuery ofProbe(String probe) {
    return new SpanQuery(
        Optional.of(probe), Optional.empty(), Optional.empty(), OptionalInt.empty());
  }
}
