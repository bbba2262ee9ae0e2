package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.probe.Doorman.Admission;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.rest.Settling;
import org.restpoint.stability.suspicion.Circumstances;

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
  private final DayBook day;
  private final Replies replies;
  private final Underway underway;
  private final Brackets brackets;
  private final Closing closing;
  private final Deeds deeds;
  private final TimeKeeper timeKeeper;
  private final Optional<String> interrupted;

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
    this.doorman = new Doorman(settings, calibrations, archive);
    this.reckoning = new Reckoning(settings, calibrations, doorman, memory, archive);
    this.nextStep = new NextStep(settings, calibrations, doorman, reckoning.checks());
    this.response =
        new Response(
            settings,
            calibrations::slopeMillivoltsPerDecade,
            memory.response().filter(learnt -> calibrations.otherAnalyte().isEmpty()));
    this.underway =
        new Underway(
            settings, memory, response, (time, why) -> voice.event(reckoning.missing(time, why)));
    this.day = new DayBook(settings, memory);
    this.replies = new Replies(voice, reckoning, memory.withholding());
    this.brackets = new Brackets(settings, archive, voice, memory);
    this.closing = new Closing(reckoning, calibrations, replies, response, brackets, voice);
    this.deeds = new Deeds(voice, calibrations, reckoning, response, day, underway, brackets);
    this.timeKeeper = new TimeKeeper(memory);
    this.interrupted = memory.underway();
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
    underway.begin(now).ifPresent(gap -> voice.notice(now, Interruptions.gap(gap)));
    day.begin(now).ifPresent(reason -> voice.notice(now, reason));
    tellState(now);
  }

  /** All it needs to go on later. */
  public ProbeMemory memory() {
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
        Optional.of(day.day()),
        underway.away(),
        Optional.of(underway.memory()),
        underway.instruction().map(instruction -> instruction.task().word()),
        response.history(),
        replies.withholding(),
        Optional.of(reckoning.checks().memory()),
        Optional.of(calibrations.watch().past()),
        Optional.of(brackets.open()),
        Optional.empty());
  }

  /** Whether nothing that it reads may be kept or published: it stands in a private sample. */
  public boolean withholds() {
    return replies.withholding();
  }

  /**
   * Ends the reading of a private sample of which nothing came, as in a replay of a journal that
   * kept nothing of it.
   */
  public void passUnread(Instant given) {
    Instant time = pass(given);
    boolean unread =
        underway
            .attempt()
            .filter(running -> running.isConfidential() && running.settling().taken() == 0)
            .isPresent();
    if (unread) {
      underway.clear();
      reckoning.unseen();
      tellState(time);
    }
  }

  /** Whether it is reading a sample, or a portion of it, right now. */
  public boolean isReading(String sampleNumber) {
    return underway
        .attempt()
        .flatMap(running -> running.purpose().sample())
        .filter(record -> record.path("number").asText().equals(sampleNumber))
        .isPresent();
  }

  /** Results of a sample are not kept any more: it remembers nothing of them. */
  public void forget(Collection<String> results) {
    reckoning.forget(results);
    brackets.forget(results);
  }

  /** It stands in a sample of which nothing is to be kept until it stands elsewhere. */
  public void withhold() {
    replies.withhold();
  }

  /** A rig has put it into water to rinse in: it counts as rinsed, and nobody is answered. */
  public void rinse(Instant given) {
    Instant time = pass(given);
    replies.elsewhere();
    deeds.carryOut(time, new Instruction.Rinsed(Optional.empty()));
    tellState(time);
  }

  /** Takes a reading. */
  public void reading(Instant time, double millivolts, Temperature temperature) {
    Instant now = pass(time);
    Optional<Attempt> read = underway.reading(now, millivolts);
    if (read.isEmpty()) {
      return;
    }
    Attempt current = read.get();
    Settling.Stage stage = current.accept(now, millivolts, temperature);
    if (!current.isConfidential()) {
      current.progress(settings.station(), settings.probe(), now).ifPresent(voice::event);
    }
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
    underway
        .attempt()
        .filter(running -> running.instruction().isPresent())
        .ifPresent(running -> elapse(running.deadline().plusMillis(1)));
  }

  /** When something happens next if nothing comes in before; empty while nothing would. */
  public Optional<Instant> due() {
    return earlier(underway.givingUp(), earlier(day.due(), underway.dueInStream()));
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
    if (underway.givingUp().equals(Optional.of(time))) {
      Attempt over = underway.attempt().orElseThrow();
      over.giveUp();
      finish(over.deadline(), over);
    } else if (day.due().equals(Optional.of(time))) {
      day.happen(time).ifPresent(reason -> voice.notice(time, reason));
      if (day.hasSoaked(time)) {
        reckoning.know(Circumstances::afterSoak);
      }
      tellState(time);
    } else {
      underway.happenInStream(time);
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
              day.clockPutBack(before, now);
              underway.again(now, response.watch(), settings.limits());
              tellState(now);
            });
    return now;
  }

  /** Carries out an instruction, or says why not. */
  public void instruct(Instant given, Instruction instruction) {
    Instant time = pass(given);
    Admission admission = doorman.admit(time, instruction, underway.attempt(), day.isSoaking());
    if (admission instanceof Admission.Refused refused) {
      replies.refused(time, instruction, refused.reason());
      return;
    }
    replies.accepted(time, instruction);
    if (admission instanceof Admission.Read read) {
      begin(time, instruction, read.purpose());
    } else if (instruction.task() instanceof Instruction.AcceptStandard accept) {
      Calibration calibration = closing.accepted(time, accept.because());
      voice.done(time, instruction, Optional.of(calibration));
    } else {
      deeds.carryOut(time, instruction.task());
      voice.done(time, instruction, Optional.empty());
    }
    tellState(time);
  }

  private void begin(Instant time, Instruction instruction, Purpose purpose) {
    underway.leaveStream(time);
    List<String> skipped = day.into(time, purpose);
    if (settings.care().isPresent()) {
      reckoning.know(
          known -> known.before(!skipped.contains("not-soaked"), !skipped.contains("not-rinsed")));
    }
    if (!(purpose instanceof Purpose.OfStandard)) {
      calibrations.endRound();
    }
    underway.put(
        Attempt.onInstruction(
            purpose, time, instruction, skipped, response.watch(), settings.limits()));
  }

  private void finish(Instant time, Attempt ended) {
    underway.clear();
    closing.of(time, ended);
    if (ended.instruction().isPresent()) {
      tellState(time);
    }
  }

  /** Says what those who give it instructions have to say of it. */
  public void notice(Instant time, Reason reason) {
    voice.notice(time, reason);
  }

  private void tellState(Instant time) {
    voice.event(
        nextStep.state(
            time, underway.attempt(), day, underway.away(), reckoning.samplesSinceStandard()));
  }
}
