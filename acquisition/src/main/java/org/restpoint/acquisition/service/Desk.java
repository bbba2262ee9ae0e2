package org.restpoint.acquisition.service;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.instruction.InstructionException;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.acquisition.probe.Words;
import org.restpoint.acquisition.station.StationRoutine;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.StoredInstruction;
import org.restpoint.config.station.Station;
import org.restpoint.stability.calibration.Reason;

/**
 * Takes instructions in: reads them, refuses what cannot be carried out in good faith, has them
 * stored before they are acknowledged, and gives them to the routine.
 */
final class Desk {

  /**
   * An instruction that says when it was given is not carried out later than this: the electrode
   * may stand in another cup by then.
   */
  private static final Duration LATEST = Duration.ofMinutes(1);

  private final Station station;
  private final Journal journal;
  private final StationRoutine routine;
  private final Outgoing outgoing;

  Desk(Station station, Journal journal, StationRoutine routine, Outgoing outgoing) {
    this.station = station;
    this.journal = journal;
    this.routine = routine;
    this.outgoing = outgoing;
  }

  void take(Instant now, Input.Message message) {
    outgoing.afterwards(message.stored());
    InstructionReader.Addressed addressed;
    try {
      addressed = InstructionReader.read(message.text());
    } catch (InstructionException e) {
      Answer answer =
          refusal(
              now,
              message,
              Optional.empty(),
              "instruction",
              new Reason(
                  "instruction-unreadable",
                  String.valueOf(e.getMessage()),
                  "Mend it and send it again."));
      if (Confidence.mayBeOwed(message.text())) {
        outgoing.confide(answer);
      } else {
        outgoing.answer(answer);
      }
      return;
    }
    Optional<Reason> why = whyNot(now, message, addressed);
    if (why.isPresent()) {
      refuse(
          now,
          message,
          addressed.instruction().id(),
          addressed.instruction().task().word(),
          why.get());
      return;
    }
    String id = addressed.instruction().id().orElseGet(() -> UUID.randomUUID().toString());
    if (outgoing.keeps(message.probe(), id)
        || journal.instruction(message.probe(), id).isPresent()) {
      if (!message.repeated() && !routine.again(message.probe(), addressed.instruction())) {
        refuse(
            now,
            message,
            Optional.of(id),
            addressed.instruction().task().word(),
            new Reason(
                "instruction-repeated",
                "an instruction with the id %s was carried out before".formatted(id),
                "Give each instruction an id of its own."));
      }
      return;
    }
    outgoing.keep(
        new StoredInstruction(
            id, message.probe(), now, stored(now, message, id, addressed.instruction())));
    routine.instruct(now, message.probe(), addressed.instruction());
  }

  private Optional<Reason> whyNot(
      Instant now, Input.Message message, InstructionReader.Addressed addressed) {
    if (message.retained()) {
      return Optional.of(
          new Reason(
              "instruction-retained",
              "the instruction is retained by the broker, so it may be from any time",
              "Send it without the retain flag."));
    }
    if (addressed.instruction().task() instanceof Instruction.Forget forget
        && forget.sample().isEmpty()) {
      return Optional.of(
          new Reason(
              "instruction-unreadable",
              "sample is missing: expected the number of the sample to forget",
              "Mend it and send it again."));
    }
    if (addressed.probe().isPresent() && !addressed.probe().get().equals(message.probe())) {
      return Optional.of(
          new Reason(
              "instruction-misaddressed",
              "the instruction names probe %s on the topic of probe %s"
                  .formatted(addressed.probe().get(), message.probe()),
              "Send it on the topic of the probe it is for."));
    }
    Optional<Duration> off = addressed.time().map(given -> Duration.between(given, now).abs());
    if (off.isPresent() && off.get().compareTo(LATEST) > 0) {
      return Optional.of(
          new Reason(
              "instruction-late",
              "the instruction was given at %s and it is %s now; it may be %s off"
                  .formatted(addressed.time().get(), now, Words.span(LATEST)),
              "Give it again; if it was given just now, set the clocks of both machines."));
    }
    return Optional.empty();
  }

  /**
   * The instruction as a replay takes it: with its time and its probe, and with the cup that an
   * electrode is put into, so that it can be known later in which sample it stood.
   */
  private String stored(Instant now, Input.Message message, String id, Instruction instruction) {
    try {
      ObjectNode node =
          Confidence.storable(
              instruction, (ObjectNode) EventJson.mapper().readTree(message.text()));
      ObjectNode kept = EventJson.mapper().createObjectNode();
      kept.put("time", now.toString());
      kept.put("probe", message.probe());
      kept.put("id", id);
      node.properties().forEach(field -> kept.putIfAbsent(field.getKey(), field.getValue()));
      if (instruction.task() instanceof Instruction.InPlace) {
        routine
            .presentCup(now, message.probe())
            .ifPresent(cup -> kept.putIfAbsent("cup", kept.textNode(cup)));
      }
      return EventJson.write(kept);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("an instruction that was read is JSON", e);
    }
  }

  private void refuse(
      Instant now, Input.Message message, Optional<String> id, String word, Reason reason) {
    outgoing.answer(refusal(now, message, id, word, reason));
  }

  private Answer refusal(
      Instant now, Input.Message message, Optional<String> id, String word, Reason reason) {
    return new Answer(
        id,
        station.name(),
        message.probe(),
        now,
        word,
        Answer.Verdict.REFUSED,
        List.of(reason),
        Optional.empty());
  }
}
