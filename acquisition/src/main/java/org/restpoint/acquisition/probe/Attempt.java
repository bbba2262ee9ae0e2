package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.restpoint.acquisition.event.Progress;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.stability.rest.RestProgress;
import org.restpoint.stability.rest.SettleLimits;
import org.restpoint.stability.rest.Settling;
import org.restpoint.stability.rest.forecast.Forecast;
import org.restpoint.stability.rest.forecast.ResponseSeen;

/** One reading of a probe, from its beginning to its decision. */
final class Attempt {

  private static final Duration PROGRESS_EVERY = Duration.ofSeconds(1);

  /**
   * No electrode gives a kilovolt. What claims more is taken as that much, so that sums of squares
   * stay finite; at rest it is refused as beyond any solution.
   */
  private static final double MOST_MILLIVOLTS = 1e6;

  private final Purpose purpose;
  private final Instant start;
  private final Instant countsFrom;
  private final Optional<Instruction> instruction;
  private final List<String> skipped;
  private final Duration limit;
  private final Instant deadline;
  private final Settling settling;
  private final Watch watch;
  private Optional<Instant> firstReading = Optional.empty();
  private Optional<Instant> lastReading = Optional.empty();
  private Instant lastProgress;
  private Temperature temperature =
      new Temperature.Missing("no reading has come", "Look whether the probe is connected.");

  private Attempt(
      Purpose purpose,
      Instant start,
      Instant countsFrom,
      Optional<Instruction> instruction,
      List<String> skipped,
      Watch watch,
      SettleLimits limits,
      Duration limit) {
    this.purpose = purpose;
    this.start = start;
    this.countsFrom = countsFrom;
    this.instruction = instruction;
    this.skipped = List.copyOf(skipped);
    this.limit = limit;
    this.deadline = start.plus(limits.giveUpAfter());
    this.lastProgress = start;
    this.watch = watch;
    this.settling = new Settling(watch.detector(), limits, 0);
  }

  /**
   * Begins on an instruction: the readings after it count.
   *
   * @param skipped the steps before it that were skipped, as flags
   */
  static Attempt onInstruction(
      Purpose purpose,
      Instant start,
      Instruction instruction,
      List<String> skipped,
      Watch watch,
      SettleLimits limits) {
    return new Attempt(
        purpose,
        start,
        start.plusMillis(1),
        Optional.of(instruction),
        skipped,
        watch,
        limits,
        limits.giveUpAfter());
  }

  /**
   * Begins in the stream: a reading at the very beginning counts.
   *
   * @param limit how long it may take, as a person is told
   */
  static Attempt inStream(Instant start, Watch watch, SettleLimits limits, Duration limit) {
    return new Attempt(
        new Purpose.OfStream(), start, start, Optional.empty(), List.of(), watch, limits, limit);
  }

  /** The same anew after the clock was put back; in the stream the next one begins by itself. */
  Optional<Attempt> again(Instant now, Watch anew, SettleLimits limits) {
    return instruction.map(given -> onInstruction(purpose, now, given, skipped, anew, limits));
  }

  /** Takes a reading; one that is older than the one before it counts as of the same instant. */
  Settling.Stage accept(Instant time, double millivolts, Temperature now) {
    if (time.isBefore(countsFrom)) {
      return settling.stage();
    }
    Instant inOrder = lastReading.filter(last -> last.isAfter(time)).orElse(time);
    double bounded = Math.max(-MOST_MILLIVOLTS, Math.min(MOST_MILLIVOLTS, millivolts));
    Settling.Stage stage = settling.accept(nanos(inOrder), bounded);
    if (stage != Settling.Stage.GIVEN_UP) {
      temperature = now;
      firstReading = firstReading.or(() -> Optional.of(inOrder));
      lastReading = Optional.of(inOrder);
    }
    return stage;
  }

  /** Gives up: its time is over. */
  void giveUp() {
    settling.elapse(settling.deadlineNanos() + 1);
  }

  /** Nanoseconds since its beginning. */
  private long nanos(Instant time) {
    return Duration.between(start, time).toNanos();
  }

  /** When it began. */
  Instant start() {
    return start;
  }

  /** The last instant at which a reading is still taken. */
  Instant deadline() {
    return deadline;
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

  /** Whether nobody but the caller hears of it, and nothing of it is kept. */
  boolean isConfidential() {
    return instruction
        .map(Instruction::task)
        .filter(task -> task instanceof Instruction.Measure measure && measure.confidential())
        .isPresent();
  }

  /** The steps before it that were skipped, as flags. */
  List<String> skipped() {
    return skipped;
  }

  Settling settling() {
    return settling;
  }

  Temperature temperature() {
    return temperature;
  }

  /** How many readings had taught how the electrode responds when it began. */
  OptionalLong responseReadings() {
    return watch.responseReadings();
  }

  /**
   * What it has told of the electrode's response, where that was seen from its first reading on:
   * after a disturbance less is seen than was read.
   */
  Optional<ResponseSeen> undisturbedResponse() {
    if (firstReading.isEmpty() || lastReading.isEmpty()) {
      return Optional.empty();
    }
    double seconds = (nanos(lastReading.get()) - nanos(firstReading.get())) / 1e9;
    return watch.response().filter(seen -> seen.seconds() >= seconds);
  }

  /**
   * What to tell of its progress, if a second has gone by since it began or was told last: so two
   * attempts one after the other tell no more than once a second either.
   */
  Optional<Progress> progress(String station, String probe, Instant time) {
    if (settling.taken() == 0 || time.isBefore(lastProgress.plus(PROGRESS_EVERY))) {
      return Optional.empty();
    }
    lastProgress = time;
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
            seen.driftMillivoltsPerMinute(),
            seen.driftStandardErrorMillivoltsPerMinute(),
            number(seen.forecast().map(Forecast::millivolts)),
            number(seen.forecast().map(Forecast::standardUncertaintyMillivolts)),
            watch.responseReadings(),
            members(seen)));
  }

  private static Optional<List<Progress.Member>> members(RestProgress seen) {
    if (seen.members().isEmpty()) {
      return Optional.empty();
    }
    List<Progress.Member> told = new ArrayList<>();
    for (RestProgress.Member member : seen.members()) {
      RestProgress own = member.progress();
      told.add(
          new Progress.Member(
              member.rule(),
              own.atRest(),
              own.spreadMillivolts(),
              own.driftMillivoltsPerMinute(),
              own.driftStandardErrorMillivoltsPerMinute(),
              number(own.forecast().map(Forecast::millivolts)),
              number(own.forecast().map(Forecast::standardUncertaintyMillivolts)),
              members(own)));
    }
    return Optional.of(told);
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.map(OptionalDouble::of).orElseGet(OptionalDouble::empty);
  }
}
