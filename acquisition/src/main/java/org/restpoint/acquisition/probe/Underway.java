package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.rest.SettleLimits;

/** What is being read, on an instruction or in the stream. */
final class Underway {

  private final boolean inStream;
  private final Stream stream;
  private final BiConsumer<Instant, Reason> missing;
  private Optional<Attempt> attempt = Optional.empty();
  private boolean away;

  /**
   * Nothing yet.
   *
   * @param missing told of a result that a stream should have had and has not
   */
  Underway(
      ProbeSettings settings,
      ProbeMemory memory,
      Response response,
      BiConsumer<Instant, Reason> missing) {
    this.inStream = !(settings.routine() instanceof Routine.Instructed);
    this.stream = Stream.of(settings, memory.stream(), response);
    this.missing = missing;
    this.away = memory.away() && inStream;
  }

  Optional<Stream.Gap> begin(Instant now) {
    return stream.begin(now);
  }

  Optional<Attempt> attempt() {
    return attempt;
  }

  /** The instruction that is being carried out. */
  Optional<Instruction> instruction() {
    return attempt.flatMap(Attempt::instruction);
  }

  /** Whether a stream's electrode is out of its stream. */
  boolean away() {
    return away;
  }

  /** Where the stream stands, for after a restart. */
  ProbeMemory.InStream memory() {
    return stream.memory().from(attempt.filter(a -> a.instruction().isEmpty()).map(Attempt::start));
  }

  /** A reading has come: what it belongs to, which it may begin. */
  Optional<Attempt> reading(Instant now, double millivolts) {
    Optional<Attempt> begun = stream.reading(now, millivolts, away || attempt.isPresent());
    attempt = attempt.or(() -> begun);
    return attempt;
  }

  /** Begins on an instruction; what the stream was reading is over. */
  void put(Attempt asked) {
    attempt = Optional.of(asked);
  }

  /** Nothing is being read any more. */
  void clear() {
    attempt = Optional.empty();
  }

  /** The clock was put back: what an instruction asked for begins again. */
  void again(Instant now, Watch watch, SettleLimits limits) {
    attempt = attempt.flatMap(current -> current.again(now, watch, limits));
    stream.begin(now);
  }

  /** An attempt is given up just after its deadline: a reading at the deadline still counts. */
  Optional<Instant> givingUp() {
    return attempt.map(current -> current.deadline().plusMillis(1));
  }

  /** When the stream does something next. */
  Optional<Instant> dueInStream() {
    return stream.due();
  }

  void happenInStream(Instant time) {
    Stream.Happening happening = stream.happen(time, away);
    if (happening.missing().isPresent()) {
      attempt = attempt.filter(current -> current.instruction().isPresent());
      missing.accept(time, happening.missing().get());
    }
    attempt = attempt.or(happening::attempt);
  }

  /** The electrode is taken out of its stream, if it has one. */
  void leaveStream(Instant time) {
    if (attempt.isPresent()) {
      attempt = Optional.empty();
      missing.accept(time, IntervalStream.inMaintenance());
    }
    away = inStream;
  }

  /**
   * The electrode is back in its stream.
   *
   * @return whether it has one
   */
  boolean backInStream(Instant time) {
    if (inStream) {
      away = false;
      stream.begin(time);
    }
    return inStream;
  }
}
