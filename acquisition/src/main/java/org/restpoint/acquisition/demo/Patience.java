package org.restpoint.acquisition.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.restpoint.acquisition.event.Event;

/** How long something is waited for, in time at the bench: a slow machine has more of it. */
final class Patience {

  private final Duration longest;
  private Optional<Instant> began = Optional.empty();

  Patience(Duration longest) {
    this.longest = longest;
  }

  /** Something else happened than what is waited for; at some time it is too late. */
  void tax(Event event) {
    Instant first = began.orElse(event.time());
    began = Optional.of(first);
    if (first.plus(longest).isBefore(event.time())) {
      throw DemoException.brokenOff(
          "the station gave no outcome within %d min at the bench".formatted(longest.toMinutes()));
    }
  }
}
