package org.restpoint.config.station;

import java.time.Duration;

/** Who says when a probe is read. */
public sealed interface Routine {

  /** At the bench: a person or a rig gives instructions. */
  record Instructed() implements Routine {}

  /**
   * In the stream: a result each interval, gaps explicit.
   *
   * @param interval above zero; intervals begin at whole multiples since 1970-01-01T00:00Z
   */
  record EachInterval(Duration interval) implements Routine {}

  /**
   * In the stream: a result each time the potential comes to rest.
   *
   * @param gapAfter silence longer than this is told as a gap
   */
  record EachRest(Duration gapAfter) implements Routine {}
}
