package org.restpoint.adapters.simulated;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;

/**
 * Which visit is when. After the last one the first comes again, unless the last is for good. For
 * one thread.
 */
final class Itinerary {

  private final List<Visit> visits;
  private int current;
  private Optional<Duration> ends;

  Itinerary(List<Visit> visits) {
    this.visits = visits;
    this.ends = visits.size() <= 1 ? Optional.empty() : visits.get(0).span();
  }

  /** Makes the moves that are due up to a time since the start, each told with its own time. */
  void until(Duration elapsed, BiConsumer<Duration, Beaker> move) {
    while (ends.isPresent() && ends.get().compareTo(elapsed) <= 0) {
      Duration moved = ends.get();
      current = (current + 1) % visits.size();
      Visit next = visits.get(current);
      move.accept(moved, next.beaker());
      ends = next.span().map(moved::plus);
    }
  }
}
