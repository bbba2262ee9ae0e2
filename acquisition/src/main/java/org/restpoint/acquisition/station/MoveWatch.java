package org.restpoint.acquisition.station;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.restpoint.config.station.Moves;
import org.restpoint.stability.move.Motion;
import org.restpoint.stability.move.MoveDetector;
import org.restpoint.stability.move.MoveSigns;

/** Watches an electrode for its move into the next cup, for so long. */
final class MoveWatch {

  private final MoveDetector detector;
  private final Duration notSeenAfter;
  private Optional<Instant> until = Optional.empty();

  MoveWatch(Moves.ByItself how) {
    detector =
        new MoveDetector(
            new MoveSigns(
                how.stepMillivolts(),
                how.outOfSolutionMillivolts(),
                how.readings(),
                how.calmMillivolts(),
                how.calmFor()));
    notSeenAfter = how.notSeenAfter();
  }

  Motion accept(Instant time, double millivolts) {
    return detector.accept(
        Math.addExact(Math.multiplyExact(time.getEpochSecond(), 1_000_000_000L), time.getNano()),
        millivolts);
  }

  /** The electrode was put somewhere by word: what was seen before says nothing. */
  void begin() {
    detector.begin();
  }

  /** The potential is at rest. */
  void rested() {
    detector.rested();
  }

  /** Whether a move is waited for from now on; one that is waited for already goes on. */
  void await(boolean whether, Instant now) {
    until = whether ? until.or(() -> Optional.of(now.plus(notSeenAfter))) : Optional.empty();
  }

  /** Until when a move is waited for; empty while none is. */
  Optional<Instant> until() {
    return until;
  }

  /** For how long one is waited for. */
  Duration notSeenAfter() {
    return notSeenAfter;
  }
}
