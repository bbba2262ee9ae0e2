package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.Optional;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.calibration.Reason;

/** When a probe is read without being told to. */
sealed interface Stream permits Stream.AtBench, IntervalStream, RestStream {

  /** The stream a probe's settings ask for, going on from {@code next} where that is known. */
  static Stream of(ProbeSettings settings, Optional<Instant> next) {
    Routine routine = settings.routine();
    if (routine instanceof Routine.EachInterval each) {
      return new IntervalStream(settings, each.interval(), next);
    }
    if (routine instanceof Routine.EachRest each) {
      return new RestStream(settings, each.gapAfter());
    }
    return new AtBench();
  }

  /** Begins at an instant; gives the beginning of a gap, when the service was away for one. */
  Optional<Instant> begin(Instant now);

  /** A reading has come; gives the attempt that begins with it, unless the probe is busy. */
  Optional<Attempt> reading(Instant time, double millivolts, boolean busy);

  /** When something is due next. */
  Optional<Instant> due();

  /** What was due happens; {@code away} when the electrode is out of the stream. */
  Happening happen(Instant time, boolean away);

  /** An attempt has ended. */
  void ended(Attempt attempt);

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
    public Optional<Instant> begin(Instant now) {
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
    public void ended(Attempt attempt) {
      // Nothing follows by itself.
    }
  }
}
