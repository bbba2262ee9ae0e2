package org.restpoint.acquisition.station;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Answer.Verdict;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.stability.calibration.Reason;

/**
 * How the station itself answers an instruction, where no probe has to do with it.
 *
 * @param station the station's name
 * @param output where answers go
 */
record DeskAnswers(String station, Output output) {

  void accepted(Instant time, String probe, Instruction instruction) {
    say(time, probe, instruction, Verdict.ACCEPTED, List.of(), Optional.empty());
  }

  void done(Instant time, String probe, Instruction instruction, Optional<Event> outcome) {
    say(time, probe, instruction, Verdict.DONE, List.of(), outcome);
  }

  void refused(Instant time, String probe, Instruction instruction, Reason why) {
    say(time, probe, instruction, Verdict.REFUSED, List.of(why), Optional.empty());
  }

  private void say(
      Instant time,
      String probe,
      Instruction instruction,
      Verdict verdict,
      List<Reason> reasons,
      Optional<Event> outcome) {
    output.answer(
        new Answer(
            instruction.id(),
            station,
            probe,
            time,
            instruction.task().word(),
            verdict,
            reasons,
            outcome));
  }
}
