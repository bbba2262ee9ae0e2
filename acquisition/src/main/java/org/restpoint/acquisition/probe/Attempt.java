package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.restpoint.acquisition.event.Progress;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.stability.rest.RestProgress;
import org.restpoint.stability.rest.RestRule;
import org.restpoint.stability.rest.SettleLimits;
import org.restpoint.stability.rest.Settling;

/** One reading of a probe, from its beginning to its decision. */
final class Attempt {

  private static final Duration PROGRESS_EVERY = Duration.ofSeconds(1);

  private final Purpose purpose;
  private final Instant start;
  private final Instant countsFrom;
  private final Optional<Instruction> instruction;
  private final Duration limit;
  private final Settling settling;
  private Optional<Instant> lastReading = Optional.empty();
  private Optional<Instant> lastProgress = Optional.empty();
  private Temperature temperature =
      new Temperature.Missing("no reading has come", "Look whether the probe is connected.");

  private Attempt(
      Purpose purpose,
      Instant start,
      Instant countsFrom,
      Optional<Instruction> instruction,
      RestRule rule,
      SettleLimits limits) {
    this.purpose = purpose;
    this.start = start;
    this.countsFrom = countsFrom;
    this.instruction = instruction;
    this.limit = limits.giveUpAfter();
    this.settling = new Settling(rule, limits, nanos(start));
  }

  /** Begins on an instruction: the readings after it count. */
  static Attempt onInstruction(
      Purpose purpose, Instant start, Instruction instruction, RestRule rule, SettleLimits limits) {
    return new Attempt(purpose, start, start.plusMillis(1), Optional.of(instruction), rule, limits);
  }

  /** Begins in the stream: a reading at the very beginning counts. */
  static Attempt inStream(Instant start, RestRule rule, SettleLimits limits) {
    return new Attempt(new Purpose.OfStream(), start, start, Optional.empty(), rule, limits);
  }

  /** Nanoseconds since 1970, for the rules of rest. */
  static long nanos(Instant time) {
    return Math.addExact(Math.multiplyExact(time.getEpochSecond(), 1_000_000_000L), time.getNano());
  }

  Settling.Stage accept(Instant time, double millivolts, Temperature now) {
    if (time.isBefore(countsFrom)) {
      return Settling.Stage.WAITING;
    }
    Settling.Stage stage = settling.accept(nanos(time), millivolts);
    if (stage != Settling.Stage.GIVEN_UP) {
      temperature = now;
      lastReading = Optional.of(time);
    }
    return stage;
  }

  Settling.Stage elapse(Instant time) {
    return settling.elapse(nanos(time));
  }

  /** The last instant at which a reading is still taken. */
  Instant deadline() {
    long nanos = settling.deadlineNanos();
    return Instant.ofEpochSecond(
        Math.floorDiv(nanos, 1_000_000_000L), Math.floorMod(nanos, 1_000_000_000L));
  }

  /** How long it may take. */
  Duration limit() {
    return limit;
  }

  Purpose purpose() {
    return purpose;
  }

  Optional<Instruction> instruction() {
    return instruction;
  }

  Settling settling() {
    return settling;
  }

  Temperature temperature() {
    return temperature;
  }

  Optional<Instant> lastReading() {
    return lastReading;
  }

  /** What to tell of its progress, if a second has gone by since it was told last. */
  Optional<Progress> progress(String station, String probe, Instant time) {
    boolean due = lastProgress.map(last -> !time.isBefore(last.plus(PROGRESS_EVERY))).orElse(true);
    if (!due || settling.taken() == 0) {
      return Optional.empty();
    }
    lastProgress = Optional.of(time);
    RestProgress seen = settling.progress();
    return Optional.of(
        new Progress(
            station,
            probe,
            time,
            seen.readings(),
            Duration.between(start, time).toMillis() / 1e3,
            seen.latestMillivolts(),
            seen.spreadMillivolts(),
            seen.driftMillivoltsPerMinute()));
  }
}
