package org.restpoint.acquisition.schema;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.acquisition.probe.KeptResults;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.acquisition.probe.ProbeMemory;
import org.restpoint.acquisition.probe.ProbeRoutine;
import org.restpoint.acquisition.probe.ProbeSettings;
import org.restpoint.acquisition.probe.Temperature;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.rest.RestRule;

/** A probe's routine under the hand of a test: a reading a second, and all that is said kept. */
final class Session implements Output {

  static final Instant START = Instant.parse("2026-04-02T14:00:00Z");
  static final Temperature KNOWN = new Temperature.Known(Nitrate.CELSIUS, 0.2, false);

  private final List<Object> said = new ArrayList<>();
  private final KeptResults kept = new KeptResults();
  private final ProbeRoutine routine;
  private Instant now;

  private Session(ProbeSettings settings, ProbeMemory memory, Instant start) {
    now = start;
    routine = new ProbeRoutine(settings, memory, this, kept);
    routine.begin(start);
  }

  static Session of(Routine how) {
    return new Session(Nitrate.settings(how), ProbeMemory.blank(), START);
  }

  /** At the bench with another rule of rest. */
  static Session of(RestRule rule) {
    return new Session(
        Nitrate.settings(new Routine.Instructed(), rule), ProbeMemory.blank(), START);
  }

  /** At the bench, with checks. */
  static Session checked() {
    return new Session(Nitrate.checked(), ProbeMemory.blank(), START);
  }

  /** At the bench, looked after as usual. */
  static Session lookedAfter() {
    return new Session(Nitrate.lookedAfter(), ProbeMemory.blank(), START);
  }

  /** Reads to its rest what holds so many mg/L. */
  Session read(String instruction, double milligramsPerLitre) {
    return tell(instruction).read(5, Nitrate.millivolts(milligramsPerLitre));
  }

  /** Stops the routine and begins anew from what it remembers, after a while. */
  Session restartedAfter(Routine how, Duration away) {
    Session next = new Session(Nitrate.settings(how), routine.memory(), now.plus(away));
    next.said.addAll(0, said);
    return next;
  }

  @Override
  public void event(Event event) {
    if (event instanceof Result result) {
      kept.keep(result);
    }
    said.add(event);
  }

  @Override
  public void answer(Answer answer) {
    said.add(answer);
  }

  @Override
  public void confide(Answer answer) {
    answer(answer);
  }

  Session tell(String instruction) {
    routine.instruct(now, InstructionReader.read(instruction).instruction());
    return this;
  }

  Session read(int readings, double millivolts) {
    return read(readings, millivolts, KNOWN);
  }

  Session read(int readings, double millivolts, Temperature temperature) {
    for (int i = 0; i < readings; i++) {
      now = now.plusSeconds(1);
      routine.reading(now, millivolts, temperature);
    }
    return this;
  }

  /** So many readings that never come to rest. */
  Session creep(int readings) {
    for (int i = 0; i < readings; i++) {
      now = now.plusSeconds(1);
      routine.reading(now, 200 + 0.5 * i, KNOWN);
    }
    return this;
  }

  /** Reads a standard of so many mg/L to its rest. */
  Session calibrate(String standard, double milligramsPerLitre) {
    return calibrateAt(standard, Nitrate.millivolts(milligramsPerLitre));
  }

  Session calibrateAt(String standard, double millivolts) {
    return tell("{\"id\":\"c-%s\",\"do\":\"calibrate\",\"standard\":\"%s\"}"
            .formatted(standard, standard))
        .read(5, millivolts);
  }

  /** Reads a sample of so many mg/L to its rest. */
  Session measure(double milligramsPerLitre) {
    return tell("{\"do\":\"measure\"}").read(5, Nitrate.millivolts(milligramsPerLitre));
  }

  Session pass(Duration span) {
    now = now.plus(span);
    routine.elapse(now);
    return this;
  }

  /** All that was said, as it is written. */
  List<JsonNode> said() {
    return said.stream().map(EventJson::write).map(Schemas::parse).toList();
  }
}
