package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.probe.ProbeMemory.InStream;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.calibration.Reason;

/** When a probe is read without being told to. */
sealed interface Stream permits Stream.AtBench, IntervalStream, RestStream {

  /**
   * The stream a probe's settings ask for, going on from where it stood if that is known.
   *
   * @param response how the electrode comes to rest
   */
  static Stream of(ProbeSettings settings, Optional<InStream> before, Response response) {
    Routine routine = settings.routine();
    if (routine instanceof Routine.EachInterval each) {
      return new IntervalStream(settings, each.interval(), before, response);
    }
    if (routine instanceof Routine.EachRest each) {
      return new RestStream(settings, each.gapAfter(), before, response);
    }
    return new AtBench();
  }

  /**
   * Begins, or goes on after a restart, after maintenance or after the clock was put back; gives
   * the gap that lies before.
   */
  Optional<Gap> begin(Instant now);

  /** A reading has come; gives the attempt that begins with it, unless the probe is busy. */
  Optional<Attempt> reading(Instant time, double millivolts, boolean busy);

  /** When something is due next. */
  Optional<Instant> due();

  /** What was due happens; {@code away} when the electrode is out of the stream. */
  Happening happen(Instant time, boolean away);

  /** Where it stands between two attempts. */
  InStream memory();

  /** A span without results: from its first instant to the one at which they go on. */
  record Gap(Instant from, Instant to) {}

  /**
   * What comes of something due.
   *
   * @param attempt the attempt that begins
   * @param missing why there is no result
   */
  record Happening(Optional<Attempt> attempt, Optional<Reason> missing) {}

  /** Never by itself: at the bench. */
  final class AtBench implements Stream {

    @Override
    public Optional<Gap> begin(Instant now) {
      return Optional.empty();
    }

    @Override
    public Optional<Attempt> reading(Instant time, double millivolts, boolean busy) {
      return Optional.empty();
    }

    @Override
    public Optional<Instant> due() {
      return Optional.empty();
    }

    @Override
    public Happening happen(Instant time, boolean away) {
      return new Happening(Optional.empty(), Optional.empty());
    }

    @Override
    public InStream memory() {
      return new InStream(Optional.empty(), OptionalDouble.empty(), 0, false);
    }
  }
}
