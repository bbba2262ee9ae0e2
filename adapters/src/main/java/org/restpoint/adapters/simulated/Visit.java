package org.restpoint.adapters.simulated;

import java.time.Duration;
import java.util.Optional;

/**
 * A stay of the electrode in a solution. Refuses, with an {@link IllegalArgumentException}, a stay
 * that is not above 0.
 *
 * @param beaker the solution
 * @param span how long it stays; empty: for good
 */
public record Visit(Beaker beaker, Optional<Duration> span) {

  public Visit {
    if (span.filter(s -> s.isNegative() || s.isZero()).isPresent()) {
      throw new IllegalArgumentException("a visit lasts longer than 0");
    }
  }

  /** A stay of a time. */
  public static Visit of(Beaker beaker, Duration span) {
    return new Visit(beaker, Optional.of(span));
  }

  /** A stay for good. */
  public static Visit forGood(Beaker beaker) {
    return new Visit(beaker, Optional.empty());
  }
}
