package org.restpoint.acquisition.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.Link;

/**
 * Time at the simulated bench. It goes on with the electrode's readings instead of the clock on the
 * wall: a reading is never later than this clock, and where the machine is slow for a moment, time
 * at the bench is slow too, so that no deadline passes while readings are on their way.
 */
final class BenchClock implements InstantSource {

  private final Instant start;
  private final Duration interval;
  private volatile @Nullable Link electrode;

  /**
   * A clock that stands still until it follows an electrode.
   *
   * @param start the time until then, and the time stamp of the first reading
   * @param interval from one reading to the next, as they are stamped
   */
  BenchClock(Instant start, Duration interval) {
    this.start = start;
    this.interval = interval;
  }

  void follow(Link link) {
    electrode = link;
  }

  @Override
  public Instant instant() {
    Link followed = electrode;
    return followed == null
        ? start
        : start.plus(interval.multipliedBy(followed.counts().received()));
  }
}
