package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.probe.Doorman.Admission;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.rest.Settling;

/**
 * The routine of one probe. Readings, instructions and the passing of time go in, in the order of
 * their times; events and answers come out. It holds no clock: the same input gives the same
 * output, live or replayed, however often {@link #elapse} is called in between, and {@link
 * #memory()} is all it needs to go on after a restart. Times are taken to the millisecond.
 */
public final class ProbeRoutine {

  private final ProbeSettings settings;
  private final Voice voice;
  private final CalibrationBook calibrations;
  private final Doorman doorman;
  private final Reckoning reckoning;
  private final NextStep nextStep;
  private final Response response;
  private final Stream stream;
  private final TimeKeeper timeKeeper;
  private final Optional<String> interrupted;
  private Optional<Attempt> attempt = Optional.empty();
  private Optional<Instant> soakUntil;
  private boolean away;

  /** A routine that goes on from where {@code memory} was taken. */
  public ProbeRoutine(ProbeSettings settings, ProbeMemory memory, Output output, Archive archive) {
    String probe = settings.probe();
    this.settings = settings;
    this.voice =
        new Voice(
            settings,
            output,
            archive,
            new Ids(probe, "-notice", memory.lastNoticeMillis(), memory.lastNoticeCount()));
    this.calibrations = new CalibrationBook(settings, memory);
    this.doorman = new Doorman(settings, calibrations);
    this.reckoning = new Reckoning(settings, calibrations, doorman, memory);
    this.nextStep = new NextStep(settings, calibrations);
    this.response =
        new Response(
            settings,
            calibrations::slopeMillivoltsPerDecade,
            memory.response().filter(learnt -> calibrations.otherAnalyte().isEmpty()));
    this.stream = Stream.of(settings, memory.stream(), response);
    this.timeKeeper = new TimeKeeper(memory);
    this.soakUntil = memory.soakUntil();
    this.away = memory.away() && isInStream();
    this.interrupted = memory.underway();
  }

  private boolean isInStream() {
    return !(settings.routine() instanceof Routine.Instructed);
  }

  /** Begins, or goes on after a restart. */
  public void begin(Instant start) {
    Instant now = keepTime(start);
    calibrations
        .otherAnalyte()
        .ifPresent(
            before ->
                voice.notice(now, Interruptions.otherAnalyte(before, settings.analyte().name())));
    interrupted.ifPresent(what -> voice.notice(now, Interruptions.stopped(what)));
    stream.begin(now).ifPresent(gap -> voice.notice(now, Interruptions.gap(gap)));
    soakUntil = soakUntil.filter(end -> end.isAfter(now));
    tellState(now);
  }

  /** All it needs to go on later. */
  public ProbeMemory memory() {
    Optional<Instruction> underway = attempt.flatMap(Attempt::instruction);
    Optional<Instant> unfinished =
        attempt.filter(a -> a.instruction().isEmpty()).map(Attempt::start);
    return new ProbeMemory(
        reckoning.ids().lastMillis(),
        reckoning.ids().count(),
        voice.noticeIds().lastMillis(),
        voice.noticeIds().count(),
        Optional.of(settings.analyte().name()),
        calibrations.inForce(),
        calibrations.round(),
        Optional.of(calibrations.foretold()),
        calibrations.refused(),
        calibrations.standardAgain(),
        reckoning.samplesSinceStandard(),
        soakUntil,
        away,
        Optional.of(stream.memory().from(unfinished)),
        underway.map(instruction -> instruction.task().word()),
        response.history(),
        Optional.empty());
  }

  /** Takes a reading. */
  public void reading(Instant time, double millivolts, Temperature temperature) {
    Instant now = pass(time);
    Optional<Attempt> begun = stream.reading(now, millivolts, away || attempt.isPresent());
    if (attempt.isEmpty()) {
      attempt = begun;
    }
    if (attempt.isEmpty()) {
      return;
    }
    Attempt current = attempt.get();
    Settling.Stage stage = current.accept(now, millivolts, temperature);
    current.progress(settings.station(), settings.probe(), now).ifPresent(voice::event);
    if (stage == Settling.Stage.AT_REST) {
      finish(now, current);
    }
  }

  /**
   * Lets time pass: what is due at {@code now} or before happens, each at its own time. An instant
   * before the latest input changes nothing.
   */
  public void elapse(Instant now) {
    timeKeeper.reach(now);
    for (Optional<Instant> next = due();
        next.isPresent() && !next.get().isAfter(now);
        next = due()) {
      happen(next.get());
    }
  }

  /** No reading will come any more: what an instruction began is given up at its deadline. */
  public void conclude() {
    attempt
        .filter(running -> running.instruction().isPresent())
        .ifPresent(running -> elapse(running.deadline().plusMillis(1)));
  }

  /** When something happens next if nothing comes in before; empty while nothing would. */
  public Optional<Instant> due() {
    return earlier(givingUp(), earlier(soakUntil, stream.due()));
  }

  /** An attempt is given up just after its deadline: a reading at the deadline still counts. */
  private Optional<Instant> givingUp() {
    return attempt.map(current -> current.deadline().plusMillis(1));
  }

  private static Optional<Instant> earlier(Optional<Instant> a, Optional<Instant> b) {
    return a.isEmpty() || (b.isPresent() && b.get().isBefore(a.get())) ? b : a;
  }

  private Instant pass(Instant time) {
    Instant now = keepTime(time);
    elapse(now);
    return now;
  }

  private void happen(Instant time) {
    if (givingUp().equals(Optional.of(time))) {
      Attempt over = attempt.orElseThrow();
      over.giveUp();
      finish(over.deadline(), over);
    } else if (soakUntil.equals(Optional.of(time))) {
      soakUntil = Optional.empty();
      tellState(time);
    } else {
      dueInStream(time);
    }
  }

  private void dueInStream(Instant time) {
    Stream.Happening happening = stream.happen(time, away);
    if (happening.missing().isPresent()) {
      attempt = attempt.filter(current -> current.instruction().isPresent());
      voice.event(reckoning.missing(time, happening.missing().get()));
    }
    if (attempt.isEmpty()) {
      attempt = happening.attempt();
    }
  }

  /** The instant to the millisecond, after seeing to it that the clock was not put back. */
  private Instant keepTime(Instant time) {
    Instant now = time.truncatedTo(ChronoUnit.MILLIS);
    timeKeeper
        .putBackFrom(now)
        .ifPresent(
            before -> {
              voice.notice(now, Interruptions.clockPutBack(before, now));
              soakUntil = soakUntil.map(end -> TimeKeeper.moved(end, before, now));
              attempt =
                  attempt.flatMap(
                      current -> current.again(now, response.watch(), settings.limits()));
              stream.begin(now);
              tellState(now);
            });
    return now;
  }

  /** Carries out an instruction, or says why not. */
  public void instruct(Instant given, Instruction instruction) {
    Instant time = pass(given);
    Admission admission = doorman.admit(time, instruction, attempt, soakUntil);
    if (admission instanceof Admission.Refused refused) {
      refuse(time, instruction, refused.reason());
      return;
    }
    voice.accepted(time, instruction);
    if (admission instanceof Admission.Read read) {
      begin(time, instruction, read.purpose());
    } else {
      if (instruction.task() instanceof Instruction.Soak soak) {
        leaveStream(time);
        calibrations.endRound();
        soakUntil = Optional.of(time.plus(soak.span()));
      } else if (instruction.task() instanceof Instruction.Replaced replaced) {
        leaveStream(time);
        calibrations.forget();
        response.forget();
        voice.notice(time, Interruptions.replaced(replaced.part()));
      } else if (instruction.task() instanceof Instruction.Rinsed) {
        calibrations.endRound();
        soakUntil = Optional.empty();
        away = false;
        stream.begin(time);
      } else {
        cancel(time);
      }
      voice.done(time, instruction, Optional.empty());
    }
    tellState(time);
  }

  private void begin(Instant time, Instruction instruction, Purpose purpose) {
    leaveStream(time);
    soakUntil = Optional.empty();
    if (!(purpose instanceof Purpose.OfStandard)) {
      calibrations.endRound();
    }
    attempt =
        Optional.of(
            Attempt.onInstruction(purpose, time, instruction, response.watch(), settings.limits()));
  }

  private void leaveStream(Instant time) {
    if (attempt.isPresent()) {
      attempt = Optional.empty();
      voice.event(reckoning.missing(time, IntervalStream.inMaintenance()));
    }
    away = isInStream();
  }

  private void cancel(Instant time) {
    attempt
        .flatMap(Attempt::instruction)
        .ifPresent(
            cancelled ->
                voice.refused(time, cancelled, Interruptions.cancelled(), Optional.empty()));
    attempt = Optional.empty();
    soakUntil = Optional.empty();
  }

  private void refuse(Instant time, Instruction instruction, Reason reason) {
    Optional<Event> outcome = Optional.empty();
    if (instruction.task() instanceof Instruction.Measure measure) {
      Result result = reckoning.refused(time, measure.sample(), reason);
      voice.event(result);
      outcome = Optional.of(result);
    } else {
      voice.notice(time, reason);
    }
    voice.refused(time, instruction, reason, outcome);
  }

  private void finish(Instant time, Attempt ended) {
    attempt = Optional.empty();
    Event event = reckoning.ended(time, ended);
    voice.event(event);
    response.learn(ended, event).ifPresent(changed -> voice.notice(time, changed));
    if (ended.instruction().isPresent()) {
      voice.done(time, ended.instruction().get(), Optional.of(event));
      tellState(time);
    }
  }

  /** Says what those who give it instructions have to say of it. */
  public void notice(Instant time, Reason reason) {
    voice.notice(time, reason);
  }

  private void tellState(Instant time) {
    voice.event(nextStep.state(time, attempt, soakUntil, away, reckoning.samplesSinceStandard()));
  }
}
