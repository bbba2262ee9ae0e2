package org.restpoint.stability.health;

import java.time.Instant;
import java.util.Optional;

/** When a trend comes to a limit, if it goes on as it went. */
public sealed interface Projection {

  /** The line is at the limit or beyond it already. */
  record Reached() implements Projection {}

  /**
   * It will come to it.
   *
   * @param time when, by the slope itself
   * @param earliest when, by the steepest slope of its interval
   * @param latest when, by the flattest; empty where that is not within the time looked ahead
   */
  record On(Instant time, Instant earliest, Optional<Instant> latest) implements Projection {}

  /** There is no limit that way, or it is more than ten years off. */
  record NotInSight() implements Projection {}
}
