package org.restpoint.adapters.simulated;

import java.time.Duration;
import java.util.Optional;

/**
 * A fault and when it is there. Times count from the link's start; it begins and ends with a
 * reading. Refuses, with an {@link IllegalArgumentException}, times below 0, and one that comes
 * again before it is over.
 *
 * @param fault what goes wrong
 * @param at when it begins first
 * @param span how long it lasts, above 0; empty: for good
 * @param every from one beginning to the next, longer than it lasts; empty: it comes once
 */
public record ScheduledFault(
    Fault fault, Duration at, Optional<Duration> span, Optional<Duration> every) {

  public ScheduledFault {
    if (at.isNegative() || span.filter(s -> s.isNegative() || s.isZero()).isPresent()) {
      throw new IllegalArgumentException("a fault begins at 0 or later and lasts longer than 0");
    }
    if (every.isPresent() && (span.isEmpty() || every.get().compareTo(span.get()) <= 0)) {
      throw new IllegalArgumentException("a fault that comes again is over before it does");
    }
  }

  /** A fault that comes once. */
  public static ScheduledFault once(Fault fault, Duration at, Duration span) {
    return new ScheduledFault(fault, at, Optional.of(span), Optional.empty());
  }

  /** Whether it is there at a time since the start; when it ends it no longer is. */
  boolean isThere(Duration elapsed) {
    Duration since = elapsed.minus(at);
    if (since.isNegative()) {
      return false;
    }
    Duration within =
        every.isPresent()
            ? since.minus(every.get().multipliedBy(since.dividedBy(every.get())))
            : since;
    return span.isEmpty() || within.compareTo(span.get()) < 0;
  }
}
