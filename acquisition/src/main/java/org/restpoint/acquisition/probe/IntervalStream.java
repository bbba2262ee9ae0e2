package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.probe.ProbeMemory.InStream;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.rest.SettleLimits;

/** A result each interval, from whole multiples of it since 1970, so that stations line up. */
final class IntervalStream implements Stream {

  private final Duration interval;
  private final Response response;
  private final SettleLimits limits;
  private final Duration told;
  private Optional<Instant> next;

  IntervalStream(
      ProbeSettings settings, Duration interval, Optional<InStream> before, Response response) {
    this.response = response;
    this.interval = interval;
    this.next = before.flatMap(InStream::next);
    Duration longest = interval.minusMillis(1);
    Duration giveUp = settings.limits().giveUpAfter();
    boolean shorter = giveUp.compareTo(longest) <= 0;
    this.limits = new SettleLimits(settings.limits().notBefore(), shorter ? giveUp : longest);
    this.told = shorter ? giveUp : interval;
  }

  /** An interval that has had its result is not begun again; a far one is from a wrong clock. */
  @Override
  public Optional<Gap> begin(Instant now) {
    long length = interval.toMillis();
    Instant upTo =
        Instant.ofEpochMilli(Math.floorDiv(now.toEpochMilli() + length - 1, length) * length);
    Optional<Gap> gap =
        next.filter(start -> start.isBefore(upTo)).map(start -> new Gap(start, upTo));
    next =
        next.filter(start -> start.isAfter(upTo) && !start.isAfter(upTo.plus(interval)))
            .or(() -> Optional.of(upTo));
    return gap;
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
            Optional.of(Attempt.inStream(time, response.watch(), limits, told)), Optional.empty());
  }

  @Override
  public InStream memory() {
    return new InStream(next, OptionalDouble.empty(), 0, false);
  }

  static Reason inMaintenance() {
    return new Reason(
        "in-maintenance",
        "the electrode is out of the stream for an instruction",
        "When it is rinsed and back in the stream, give: rinsed");
  }
}
