package org.restpoint.acquisition.station;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.acquisition.batch.Order;
import org.restpoint.acquisition.batch.Stage;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.instruction.Cup;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.probe.Archive;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.acquisition.probe.ProbeMemory;
import org.restpoint.acquisition.probe.ProbeRoutine;
import org.restpoint.acquisition.probe.ProbeSettings;
import org.restpoint.acquisition.probe.Temperature;
import org.restpoint.config.station.Moves;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.move.Motion;

/**
 * A probe's routine with a batch before it: words of a batch are carried out by {@link BatchWords},
 * the electrode's moves are seen where that is asked for, and everything else goes to the probe's
 * routine as it comes. Like that routine it holds no clock.
 */
final class BatchRoutine {

  private final BatchVoice voice;
  private final ProbeRoutine routine;
  private final BatchWords words;
  private final Optional<MoveWatch> watch;

  /** A routine that goes on from where {@code memory} was taken. */
  BatchRoutine(
      ProbeSettings settings, Moves moves, ProbeMemory memory, Output output, Archive archive) {
    this.watch =
        moves instanceof Moves.ByItself how ? Optional.of(new MoveWatch(how)) : Optional.empty();
    this.voice = new BatchVoice(watch.isPresent(), memory.batch(), output);
    this.routine = new ProbeRoutine(settings, memory, voice, archive);
    this.words = new BatchWords(settings, archive, voice, routine);
  }

  void begin(Instant now) {
    routine.begin(now);
  }

  ProbeMemory memory() {
    return routine.memory().with(voice.batch());
  }

  void conclude() {
    routine.conclude();
    afterReading();
  }

  /** Whether nothing that it reads may be kept or published. */
  boolean withholds() {
    return routine.withholds();
  }

  /** Ends the reading of a private sample of which nothing came. */
  void passUnread(Instant time) {
    elapse(time);
    routine.passUnread(time);
  }

  /** Whether it is reading a sample right now. */
  boolean isReading(String sampleNumber) {
    return routine.isReading(sampleNumber);
  }

  /**
   * Remembers nothing of a sample any more.
   *
   * @param results the sample's results
   * @return whether a list of cups told of it
   */
  boolean forget(Instant time, String sampleNumber, List<String> results) {
    if (!results.isEmpty()) {
      routine.forget(results);
    }
    boolean listed = voice.forget(sampleNumber);
    voice.tellState(time);
    return listed;
  }

  /** It stands in a sample of which nothing is to be kept until it stands elsewhere. */
  void withhold() {
    routine.withhold();
  }

  /** When something happens next if nothing comes in before. */
  Optional<Instant> due() {
    return Stream.of(routine.due(), watch.flatMap(MoveWatch::until))
        .flatMap(Optional::stream)
        .min(Instant::compareTo);
  }

  void elapse(Instant now) {
    Optional<Instant> until = watch.flatMap(MoveWatch::until);
    if (until.isPresent() && !until.get().isAfter(now)) {
      routine.elapse(until.get());
      notSeen(until.get());
    }
    routine.elapse(now);
    afterReading();
  }

  void reading(Instant given, double millivolts, Temperature temperature) {
    Instant time = given.truncatedTo(ChronoUnit.MILLIS);
    elapse(time);
    Motion motion =
        watch
            .filter(on -> voice.batch().isPresent())
            .map(on -> on.accept(time, millivolts))
            .orElse(Motion.NONE);
    if (motion == Motion.OUT_OF_SOLUTION && voice.is(Stage.READING)) {
      pulledEarly(time);
    }
    routine.reading(time, millivolts, temperature);
    afterReading();
    boolean moved = motion == Motion.MOVED_THROUGH_AIR || motion == Motion.MOVED_BY_STEP;
    if (moved && voice.isAwaited()) {
      carryOut(time, new Instruction(Optional.empty(), new Instruction.InPlace(Optional.empty())));
    }
  }

  /** Carries out an instruction, or says why not; the last word of a batch again just says it. */
  void instruct(Instant given, Instruction instruction) {
    if (again(instruction)) {
      return;
    }
    Instant time = given.truncatedTo(ChronoUnit.MILLIS);
    elapse(time);
    if (instruction.task() instanceof Instruction.OfBatch) {
      voice.lastWord().is(instruction);
      watch.filter(on -> !voice.is(Stage.READING)).ifPresent(MoveWatch::begin);
      carryOut(time, instruction);
    } else if (voice.batch().isPresent() && isApart(instruction)) {
      Reason why = Order.underway(voice.batch().orElseThrow(), instruction.task().word());
      words.refuse(time, instruction, List.of(why));
    } else {
      routine.instruct(time, instruction);
      voice.tellState(time);
    }
  }

  /** The name of the cup that it is at, or moves to. */
  Optional<String> presentCup() {
    return voice.present().map(Cup::name);
  }

  /** Says the answers to the last word of a batch again, if this is it; whether it was. */
  boolean again(Instruction instruction) {
    List<Answer> answers = voice.lastWord().answersTo(instruction);
    answers.forEach(voice::repeat);
    return !answers.isEmpty();
  }

  /** Whether it is a reading, or keeps the electrode from one, that the batch does not know of. */
  private static boolean isApart(Instruction instruction) {
    Instruction.Task task = instruction.task();
    return task instanceof Instruction.Calibrate
        || task instanceof Instruction.Measure
        || task instanceof Instruction.Verify
        || task instanceof Instruction.Soak;
  }

  private void carryOut(Instant time, Instruction instruction) {
    words.carryOut(time, instruction);
    afterReading();
    await(time);
    voice.tellState(time);
  }

  private void afterReading() {
    Optional<BatchVoice.Ended> ended = voice.takeEnded();
    if (ended.isEmpty()) {
      return;
    }
    if (ended.get().atRest()) {
      watch.ifPresent(MoveWatch::rested);
    }
    if (voice.is(Stage.STANDARD_REFUSED)) {
      routine.notice(ended.get().time(), Remarks.freshStandard(voice.present().orElseThrow()));
    }
    await(ended.get().time());
  }

  private void await(Instant from) {
    watch.ifPresent(on -> on.await(voice.isAwaited(), from));
  }

  private void notSeen(Instant time) {
    Cup cup = voice.present().orElseThrow();
    MoveWatch on = watch.orElseThrow();
    voice.awaitNoMore();
    await(time);
    routine.notice(time, Remarks.notSeen(cup, on.notSeenAfter()));
    voice.tellState(time);
  }

  private void pulledEarly(Instant time) {
    Reason why = Remarks.pulledEarly(voice.present().orElseThrow());
    voice.withdraw(
        why,
        () -> routine.instruct(time, new Instruction(Optional.empty(), new Instruction.Cancel())));
    routine.notice(time, why);
    voice.tellState(time);
  }
}
