package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.Optional;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.stability.calibration.Reason;

/**
 * Tells what came of instructions: to everybody, or of a private sample to the caller alone. While
 * an electrode stands in a private sample its raw readings are withheld too, until somebody tells
 * that it stands elsewhere.
 */
final class Replies {

  private final Voice voice;
  private final Reckoning reckoning;
  private boolean withholding;

  Replies(Voice voice, Reckoning reckoning, boolean withholding) {
    this.voice = voice;
    this.reckoning = reckoning;
    this.withholding = withholding;
  }

  /** Whether nothing that the electrode reads may be kept or published. */
  boolean withholding() {
    return withholding;
  }

  /** It stands in a sample of which nothing is to be kept any more. */
  void withhold() {
    withholding = true;
  }

  /** It stands in something else than before. */
  void elsewhere() {
    withholding = false;
  }

  /** An instruction is carried out. */
  void accepted(Instant time, Instruction instruction) {
    if (isConfidential(instruction)) {
      withholding = true;
    } else if (movesElectrode(instruction.task())) {
      elsewhere();
    }
    voice.accepted(time, instruction);
  }

  /** A reading has ended. */
  void ended(Instant time, Attempt attempt, Event outcome) {
    if (!attempt.isConfidential()) {
      voice.event(outcome);
    }
    attempt.instruction().ifPresent(instruction -> done(time, instruction, outcome));
  }

  private void done(Instant time, Instruction instruction, Event outcome) {
    if (isConfidential(instruction)) {
      voice.confideDone(time, instruction, outcome);
    } else {
      voice.done(time, instruction, Optional.of(outcome));
    }
  }

  /** An instruction is not carried out. */
  void refused(Instant time, Instruction instruction, Reason reason) {
    if (!(instruction.task() instanceof Instruction.Measure measure)) {
      voice.notice(time, reason);
      voice.refused(time, instruction, reason, Optional.empty());
      return;
    }
    Result result = reckoning.refused(time, measure.sample(), reason);
    if (measure.confidential()) {
      voice.confideRefused(time, instruction, reason, result);
    } else {
      voice.event(result);
      voice.refused(time, instruction, reason, Optional.of(result));
    }
  }

  private static boolean movesElectrode(Instruction.Task task) {
    return !(task instanceof Instruction.Cancel || task instanceof Instruction.AcceptStandard);
  }

  private static boolean isConfidential(Instruction instruction) {
    return instruction.task() instanceof Instruction.Measure measure && measure.confidential();
  }
}
