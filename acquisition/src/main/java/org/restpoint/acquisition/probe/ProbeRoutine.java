package org.restpoint.acquisition.probe;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Answer.Verdict;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.probe.Doorman.Admission;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.calibration.StandardPoint;
import org.restpoint.stability.rest.RestingPotential;
import org.restpoint.stability.rest.Settling;

/**
 * The routine of one probe. Readings, instructions and the passing of time go in, in the order of
 * their times; events and answers come out. It holds no clock: the same input gives the same
 * output, live or replayed, and {@link #memory()} is all it needs to go on after a restart.
 */
public final class ProbeRoutine {

  private final ProbeSettings settings;
  private final Output output;
  private final Ids ids;
  private final Ids noticeIds;
  private final CalibrationBook calibrations;
  private final ResultMaker results;
  private final Doorman doorman;
  private final NextStep nextStep;
  private final Stream stream;
  private final Optional<String> interrupted;
  private Optional<Attempt> attempt = Optional.empty();
  private Optional<Instant> soakUntil;
  private boolean away;
  private int samplesSinceStandard;

  /** A routine that goes on from where {@code memory} was taken. */
  public ProbeRoutine(ProbeSettings settings, ProbeMemory memory, Output output) {
    this.settings = settings;
    this.output = output;
    this.ids = new Ids(settings.probe(), memory.lastIdMillis(), memory.lastIdCount());
    this.noticeIds = new Ids(settings.probe() + "-notice", memory.lastIdMillis(), 0);
    this.calibrations = new CalibrationBook(settings, memory);
    this.results = new ResultMaker(settings);
    this.doorman = new Doorman(settings, calibrations);
    this.nextStep = new NextStep(settings, calibrations);
    this.stream = Stream.of(settings, memory.streamFrom());
    this.soakUntil = memory.soakUntil();
    this.samplesSinceStandard = memory.samplesSinceStandard();
    this.away = memory.away();
    this.interrupted = memory.underway();
  }

  /** Begins, or goes on after a restart. */
  public void begin(Instant now) {
    interrupted.ifPresent(
        what ->
            notice(
                now,
                "interrupted",
                "%s was cut short when the service stopped".formatted(what),
                "Give the instruction again."));
    stream
        .begin(now)
        .ifPresent(
            from ->
                notice(
                    now,
                    "gap",
                    "no results from %s to %s: the service was not running".formatted(from, now),
                    ""));
    tellState(now);
  }

  /** All it needs to go on later. */
  public ProbeMemory memory() {
    return new ProbeMemory(
        ids.lastMillis(),
        ids.count(),
        calibrations.inForce(),
        calibrations.round(),
        calibrations.refused(),
        samplesSinceStandard,
        soakUntil,
        away,
        stream.due(),
        attempt.flatMap(Attempt::instruction).map(instruction -> instruction.task().word()));
  }

  /** Takes a reading. */
  public void reading(Instant time, double millivolts, Temperature temperature) {
    elapse(time);
    Optional<Attempt> begun = stream.reading(time, millivolts, away || attempt.isPresent());
    if (attempt.isEmpty()) {
      attempt = begun;
    }
    if (attempt.isEmpty()) {
      return;
    }
    Attempt current = attempt.get();
    Settling.Stage stage = current.accept(time, millivolts, temperature);
    current.progress(settings.station(), settings.probe(), time).ifPresent(output::event);
    if (stage == Settling.Stage.AT_REST) {
      finish(time, current);
    }
  }

  /** Lets time pass: what was due before {@code now} happens, each at its own time. */
  public void elapse(Instant now) {
    for (Optional<Instant> due = due(now); due.isPresent(); due = due(now)) {
      happen(due.get());
    }
  }

  /** No reading will come any more: what an instruction began is given up at its deadline. */
  public void conclude() {
    attempt
        .filter(running -> running.instruction().isPresent())
        .ifPresent(running -> elapse(running.deadline().plusMillis(1)));
  }

  private Optional<Instant> due(Instant now) {
    Optional<Instant> next = Optional.empty();
    if (attempt.isPresent() && attempt.get().deadline().isBefore(now)) {
      next = Optional.of(attempt.get().deadline());
    }
    next = earlier(next, soakUntil.filter(end -> !end.isAfter(now)));
    return earlier(next, stream.due().filter(start -> !start.isAfter(now)));
  }

  private static Optional<Instant> earlier(Optional<Instant> a, Optional<Instant> b) {
    return a.isEmpty() || (b.isPresent() && b.get().isBefore(a.get())) ? b : a;
  }

  private void happen(Instant time) {
    if (attempt.isPresent() && !attempt.get().deadline().isAfter(time)) {
      attempt.get().elapse(time.plusMillis(1));
      finish(time, attempt.get());
    } else if (soakUntil.isPresent() && !soakUntil.get().isAfter(time)) {
      soakUntil = Optional.empty();
      tellState(time);
    } else {
      dueInStream(time);
    }
  }

  private void dueInStream(Instant time) {
    Stream.Happening happening = stream.happen(time, away);
    if (attempt.isEmpty()) {
      attempt = happening.attempt();
    }
    happening.missing().ifPresent(why -> missing(time, why));
  }

  private void missing(Instant time, Reason why) {
    output.event(results.missing(ids.next(time), time, why));
  }

  /** Carries out an instruction, or says why not. */
  public void instruct(Instant time, Instruction instruction) {
    elapse(time);
    Admission admission = doorman.admit(time, instruction, attempt, soakUntil);
    if (admission instanceof Admission.Refused refused) {
      refuse(time, instruction, refused.reason());
      return;
    }
    answer(time, instruction, Verdict.ACCEPTED, List.of(), Optional.empty());
    if (admission instanceof Admission.Read read) {
      begin(time, instruction, read.purpose());
    } else if (instruction.task() instanceof Instruction.Soak soak) {
      calibrations.endRound();
      soakUntil = Optional.of(time.plus(soak.span()));
      answer(time, instruction, Verdict.DONE, List.of(), Optional.empty());
    } else if (instruction.task() instanceof Instruction.Rinsed) {
      away = false;
      answer(time, instruction, Verdict.DONE, List.of(), Optional.empty());
    } else {
      cancel(time, instruction);
    }
    tellState(time);
  }

  private void begin(Instant time, Instruction instruction, Purpose purpose) {
    soakUntil = Optional.empty();
    if (attempt.isPresent()) {
      missing(time, IntervalStream.inMaintenance());
    }
    away = !(settings.routine() instanceof Routine.Instructed);
    if (!(purpose instanceof Purpose.OfStandard)) {
      calibrations.endRound();
    }
    attempt =
        Optional.of(
            Attempt.onInstruction(purpose, time, instruction, settings.rule(), settings.limits()));
  }

  private void cancel(Instant time, Instruction instruction) {
    attempt
        .flatMap(Attempt::instruction)
        .ifPresent(
            cancelled ->
                answer(
                    time,
                    cancelled,
                    Verdict.REFUSED,
                    List.of(new Reason("cancelled", "it was cancelled", "")),
                    Optional.empty()));
    attempt = Optional.empty();
    soakUntil = Optional.empty();
    answer(time, instruction, Verdict.DONE, List.of(), Optional.empty());
  }

  private void refuse(Instant time, Instruction instruction, Reason reason) {
    Optional<Event> outcome = Optional.empty();
    if (instruction.task() instanceof Instruction.Measure measure) {
      Optional<ObjectNode> sample = measure.sample();
      Result result = results.refused(ids.next(time), time, sample, reason);
      output.event(result);
      outcome = Optional.of(result);
    } else {
      notice(time, reason.code(), reason.text(), reason.remedy());
    }
    answer(time, instruction, Verdict.REFUSED, List.of(reason), outcome);
  }

  private void finish(Instant time, Attempt ended) {
    attempt = Optional.empty();
    Event event =
        ended.purpose() instanceof Purpose.OfStandard of
            ? standardRead(time, ended, of.standard())
            : sampleRead(time, ended);
    output.event(event);
    ended
        .instruction()
        .ifPresent(
            instruction -> answer(time, instruction, Verdict.DONE, List.of(), Optional.of(event)));
    stream.ended(ended);
    tellState(time);
  }

  private Event standardRead(Instant time, Attempt ended, Standard standard) {
    String id = ids.next(time);
    if (ended.settling().stage() != Settling.Stage.AT_REST) {
      return calibrations.failed(id, time, results.whyUnsettled(ended));
    }
    if (!(ended.temperature() instanceof Temperature.Known known)) {
      Temperature.Missing missing = (Temperature.Missing) ended.temperature();
      return calibrations.failed(
          id, time, new Reason("no-temperature", missing.why(), missing.remedy()));
    }
    samplesSinceStandard = 0;
    RestingPotential rest = ended.settling().potential();
    return calibrations.settled(
        id,
        new StandardPoint(
            standard.name(),
            standard.molesPerLitre(),
            standard.relativeUncertainty(),
            rest.millivolts(),
            rest.standardUncertaintyMillivolts(),
            known.celsius(),
            time));
  }

  private Event sampleRead(Instant time, Attempt ended) {
    String id = ids.next(time);
    if (ended.settling().stage() != Settling.Stage.AT_REST) {
      return results.unsettled(id, time, ended);
    }
    List<String> flags =
        new ArrayList<>(doorman.flags(time, ended.purpose(), samplesSinceStandard));
    if (ended.purpose() instanceof Purpose.OfSample) {
      samplesSinceStandard++;
    }
    return results.settled(id, time, ended, calibrations.inForce(), flags);
  }

  private void answer(
      Instant time,
      Instruction instruction,
      Verdict verdict,
      List<Reason> reasons,
      Optional<Event> outcome) {
    output.answer(
        new Answer(
            instruction.id(),
            settings.station(),
            settings.probe(),
            time,
            instruction.task().word(),
            verdict,
            reasons,
            outcome));
  }

  private void notice(Instant time, String code, String text, String remedy) {
    output.event(
        new Notice(
            noticeIds.next(time), settings.station(), settings.probe(), time, code, text, remedy));
  }

  private void tellState(Instant time) {
    output.event(nextStep.state(time, attempt, soakUntil, away, samplesSinceStandard));
  }
}
