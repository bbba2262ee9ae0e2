package org.restpoint.acquisition.station;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.restpoint.acquisition.batch.Batch;
import org.restpoint.acquisition.batch.Order;
import org.restpoint.acquisition.batch.Stage;
import org.restpoint.acquisition.batch.Step;
import org.restpoint.acquisition.batch.Summary;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Answer.Verdict;
import org.restpoint.acquisition.event.BatchSummary;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.instruction.Cup;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.probe.Archive;
import org.restpoint.acquisition.probe.Ids;
import org.restpoint.acquisition.probe.ProbeRoutine;
import org.restpoint.acquisition.probe.ProbeSettings;
import org.restpoint.stability.calibration.Reason;

/** Carries out the words of a batch. */
final class BatchWords {

  private final ProbeSettings settings;
  private final Archive archive;
  private final BatchVoice voice;
  private final ProbeRoutine routine;

  BatchWords(ProbeSettings settings, Archive archive, BatchVoice voice, ProbeRoutine routine) {
    this.settings = settings;
    this.archive = archive;
    this.voice = voice;
    this.routine = routine;
  }

  /** Carries out a word of a batch, or says why not. */
  void carryOut(Instant time, Instruction instruction) {
    if (instruction.task() instanceof Instruction.Batch list) {
      begin(time, instruction, list);
      return;
    }
    if (voice.batch().isEmpty()) {
      refuse(time, instruction, List.of(Order.none()));
      return;
    }
    Batch batch = voice.batch().get();
    if (instruction.task() instanceof Instruction.Next next) {
      take(time, instruction, batch.next(next.skip()), after -> next(time, instruction, after));
    } else if (instruction.task() instanceof Instruction.InPlace inPlace) {
      take(
          time, instruction, batch.inPlace(inPlace.cup()), after -> read(time, instruction, after));
    } else {
      take(time, instruction, batch.done(), after -> end(time, instruction, after));
    }
  }

  /** What is done once a word is taken. */
  private interface Then {
    void with(Batch batch);
  }

  private void take(Instant time, Instruction instruction, Step step, Then then) {
    if (step instanceof Step.Taken taken) {
      then.with(taken.batch());
    } else if (step instanceof Step.Refused refused) {
      refuse(time, instruction, List.of(refused.reason()));
    }
  }

  /** Refuses an instruction, by an answer and by notices. */
  void refuse(Instant time, Instruction instruction, List<Reason> reasons) {
    reasons.forEach(reason -> routine.notice(time, reason));
    say(time, instruction, Verdict.REFUSED, reasons, Optional.empty());
  }

  private void begin(Instant time, Instruction instruction, Instruction.Batch list) {
    List<Reason> reasons = whyNot(list);
    if (!reasons.isEmpty()) {
      refuse(time, instruction, reasons);
      return;
    }
    say(time, instruction, Verdict.ACCEPTED, List.of(), Optional.empty());
    voice.follow(Optional.of(Batch.of(time, list.cups())));
    say(time, instruction, Verdict.DONE, List.of(), Optional.empty());
  }

  private List<Reason> whyNot(Instruction.Batch list) {
    if (voice.batch().isPresent()) {
      return List.of(Order.underway(voice.batch().get(), list.word()));
    }
    Optional<String> underway = routine.memory().underway();
    if (underway.isPresent()) {
      return List.of(
          new Reason(
              "busy",
              "the probe is still carrying out %s".formatted(underway.get()),
              "Wait until it is done, or cancel it."));
    }
    List<Reason> unknown = new ArrayList<>();
    for (Cup cup : list.cups()) {
      Set<String> known = standards(cup);
      cup.standard()
          .filter(name -> !known.contains(name))
          .ifPresent(name -> unknown.add(unknown(cup, known)));
    }
    return unknown;
  }

  private Set<String> standards(Cup cup) {
    boolean calibrates = cup.reading().filter(Instruction.Calibrate.class::isInstance).isPresent();
    return (calibrates ? settings.standards() : settings.checkStandards()).keySet();
  }

  private static Reason unknown(Cup cup, Set<String> known) {
    return new Reason(
        "standard-unknown",
        "%s: not one of this probe's standards: %s"
            .formatted(cup.words(), String.join(", ", known)),
        "Name one of them, or define it in the station file and list it under calibrate.");
  }

  private void next(Instant time, Instruction instruction, Batch after) {
    say(time, instruction, Verdict.ACCEPTED, List.of(), Optional.empty());
    if (voice.is(Stage.MOVING) || voice.is(Stage.STANDARD_REFUSED)) {
      routine.notice(time, Remarks.skipped(voice.present().orElseThrow()));
    }
    voice.follow(Optional.of(after));
    say(time, instruction, Verdict.DONE, List.of(), Optional.empty());
  }

  private void read(Instant time, Instruction instruction, Batch after) {
    voice.follow(Optional.of(after));
    Optional<Instruction.Task> reading = voice.present().flatMap(Cup::reading);
    if (reading.isPresent()) {
      routine.instruct(time, new Instruction(instruction.id(), reading.get()));
      return;
    }
    say(time, instruction, Verdict.ACCEPTED, List.of(), Optional.empty());
    routine.rinse(time);
    say(time, instruction, Verdict.DONE, List.of(), Optional.empty());
    voice.follow(Optional.of(after.rinsed()));
  }

  private void end(Instant time, Instruction instruction, Batch batch) {
    say(time, instruction, Verdict.ACCEPTED, List.of(), Optional.empty());
    BatchSummary summary =
        new Summary(settings.station(), settings.probe(), archive::result)
            .of(batch, Ids.of(settings.probe(), time, "-batch"), time);
    voice.event(summary);
    voice.follow(Optional.empty());
    say(time, instruction, Verdict.DONE, List.of(), Optional.of(summary));
  }

  private void say(
      Instant time,
      Instruction instruction,
      Verdict verdict,
      List<Reason> reasons,
      Optional<Event> outcome) {
    voice.say(
        new Answer(
            instruction.id(),
            settings.station(),
            settings.probe(),
            time,
            instruction.task().word(),
            verdict,
            reasons,
            outcome,
            voice.present().map(Cup::line)));
  }
}
