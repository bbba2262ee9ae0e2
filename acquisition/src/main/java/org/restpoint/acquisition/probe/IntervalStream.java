package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.rest.SettleLimits;

/** A result each interval, from whole multiples of it since 1970, so that stations line up. */
final class IntervalStream implements Stream {

  private final Duration interval;
  private final ProbeSettings settings;
  private final SettleLimits limits;
  private Optional<Instant> next;

  IntervalStream(ProbeSettings settings, Duration interval, Optional<Instant> next) {
    this.settings = settings;
    this.interval = interval;
    this.next = next;
    Duration longest = interval.minusMillis(1);
    Duration giveUp = settings.limits().giveUpAfter();
    this.limits =
        new SettleLimits(
            settings.limits().notBefore(), giveUp.compareTo(longest) < 0 ? giveUp : longest);
  }

  @Override
  public Optional<Instant> begin(Instant now) {
    Optional<Instant> missed = next.filter(start -> !start.plus(interval).isAfter(now));
    long length = interval.toMillis();
    long upTo = Math.floorDiv(now.toEpochMilli() + length - 1, length) * length;
    next = Optional.of(Instant.ofEpochMilli(upTo));
    return missed;
  }

  @Override
  public Optional<Attempt> reading(Instant time, double millivolts, boolean busy) {
    return Optional.empty();
  }

  @Override
  public Optional<Instant> due() {
    return next;
  }

  @Override
  public Happening happen(Instant time, boolean away) {
    next = Optional.of(time.plus(interval));
    return away
        ? new Happening(Optional.empty(), Optional.of(inMaintenance()))
        : new Happening(
            Optional.of(Attempt.inStream(time, settings.rule(), limits)), Optional.empty());
  }

  @Override
  public void ended(Attempt attempt) {
    // The next interval begins by the clock.
  }

  static Reason inMaintenance() {
    return new Reason(
        "in-maintenance",
        "the electrode is out of the stream for an instruction",
        "When it is rinsed and back in the stream, give: rinsed");
  }
}
