package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Answer.Verdict;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.stability.calibration.Reason;

/** Says what a probe's routine has to say, in the probe's name. */
final class Voice {

  private final ProbeSettings settings;
  private final Output output;
  private final Archive archive;
  private final Ids noticeIds;

  Voice(ProbeSettings settings, Output output, Archive archive, Ids noticeIds) {
    this.settings = settings;
    this.output = output;
    this.archive = archive;
    this.noticeIds = noticeIds;
  }

  /** The ids of its notices. */
  Ids noticeIds() {
    return noticeIds;
  }

  void event(Event event) {
    output.event(event);
  }

  /**
   * Says a result again as its next revision, changed; of one that is not kept any more, or that
   * the change leaves as it is, nothing is said.
   *
   * @param because what made it so, in plain words
   */
  void revise(Instant time, String id, String because, UnaryOperator<Result> change) {
    new Revision(archive, output).revise(time, id, because, change);
  }

  /** Whether a result is kept, so that it can be said again. */
  boolean keeps(String id) {
    return archive.result(id).isPresent();
  }

  void notice(Instant time, Reason reason) {
    output.event(
        new Notice(
            noticeIds.next(time),
            settings.station(),
            settings.probe(),
            time,
            reason.code(),
            reason.text(),
            reason.remedy()));
  }

  void accepted(Instant time, Instruction instruction) {
    answer(time, instruction, Verdict.ACCEPTED, List.of(), Optional.empty());
  }

  void done(Instant time, Instruction instruction, Optional<Event> outcome) {
    answer(time, instruction, Verdict.DONE, List.of(), outcome);
  }

  void refused(Instant time, Instruction instruction, Reason reason, Optional<Event> outcome) {
    answer(time, instruction, Verdict.REFUSED, List.of(reason), outcome);
  }

  /** To the caller alone. */
  void confideDone(Instant time, Instruction instruction, Event outcome) {
    output.confide(written(time, instruction, Verdict.DONE, List.of(), Optional.of(outcome)));
  }

  /** To the caller alone. */
  void confideRefused(Instant time, Instruction instruction, Reason reason, Event outcome) {
    output.confide(
        written(time, instruction, Verdict.REFUSED, List.of(reason), Optional.of(outcome)));
  }

  private void answer(
      Instant time,
      Instruction instruction,
      Verdict verdict,
      List<Reason> reasons,
      Optional<Event> outcome) {
    output.answer(written(time, instruction, verdict, reasons, outcome));
  }

  private Answer written(
      Instant time,
      Instruction instruction,
      Verdict verdict,
      List<Reason> reasons,
      Optional<Event> outcome) {
    return new Answer(
        instruction.id(),
        settings.station(),
        settings.probe(),
        time,
        instruction.task().word(),
        verdict,
        reasons,
        outcome);
  }
}
