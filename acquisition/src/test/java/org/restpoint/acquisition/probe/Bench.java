package org.restpoint.acquisition.probe;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.State;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.stability.rest.forecast.ResponseHistory;

/** A probe's routine with an electrode in somebody's hand; keeps all that is said. */
final class Bench implements Output {

  static final Instant START = Instant.parse("2026-04-02T14:00:00Z");

  private final ProbeSettings settings;
  private final Electrode electrode;
  private final ProbeRoutine routine;
  private final List<Object> said = new ArrayList<>();
  private final List<Answer> confided = new ArrayList<>();
  private final KeptResults kept;
  private Instant now;

  private Bench(Setup setup, ProbeMemory memory, Instant start, KeptResults before) {
    kept = before;
    settings = setup.settings();
    electrode = Electrode.of(settings.analyte());
    now = start;
    routine = new ProbeRoutine(settings, memory, this, kept);
    routine.begin(start);
  }

  static Bench of(Setup setup) {
    return new Bench(setup, ProbeMemory.blank(), START, new KeptResults());
  }

  /** A new routine that goes on from what this one remembers, written as JSON and read again. */
  Bench restarted(Setup setup, Duration later) {
    return new Bench(setup, remembered(), now.plus(later), kept);
  }

  /** A new routine that goes on from what this one remembers, but knows another response. */
  Bench knowing(Setup setup, ResponseHistory response) {
    ObjectNode memory = (ObjectNode) parsed(EventJson.write(routine.memory()));
    memory.set("response", EventJson.mapper().valueToTree(response));
    return new Bench(setup, memory(memory.toString()), now, kept);
  }

  ProbeMemory remembered() {
    return written(routine.memory());
  }

  static ProbeMemory written(ProbeMemory memory) {
    return memory(EventJson.write(memory));
  }

  private static ProbeMemory memory(String json) {
    try {
      return EventJson.mapper().readValue(json, ProbeMemory.class);
    } catch (JsonProcessingException e) {
      throw new AssertionError(e);
    }
  }

  static JsonNode parsed(String json) {
    try {
      return EventJson.mapper().readTree(json);
    } catch (JsonProcessingException e) {
      throw new AssertionError(e);
    }
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
    confided.add(answer);
  }

  /** What only its caller heard. */
  List<Answer> confided() {
    return List.copyOf(confided);
  }

  boolean withholds() {
    return routine.withholds();
  }

  Bench tell(String json) {
    routine.instruct(now, InstructionReader.read(json).instruction());
    return this;
  }

  Bench tell(String word, String standard) {
    return tell("{\"do\":\"%s\",\"standard\":\"%s\"}".formatted(word, standard));
  }

  /** A reading a second, all alike, at 25 °C. */
  Bench read(int readings, double millivolts) {
    return read(readings, millivolts, known(25));
  }

  Bench read(int readings, double millivolts, Temperature temperature) {
    for (int i = 0; i < readings; i++) {
      now = now.plusSeconds(1);
      routine.reading(now, millivolts, temperature);
    }
    return this;
  }

  /** Readings a second apart that differ by more than any rest allows. */
  Bench restless(int readings) {
    for (int i = 0; i < readings; i++) {
      now = now.plusSeconds(1);
      routine.reading(now, 200 + i % 2, known(25));
    }
    return this;
  }

  /** One reading, so many milliseconds after the last input. */
  Bench readAfterMillis(long millis, double millivolts) {
    now = now.plusMillis(millis);
    routine.reading(now, millivolts, known(25));
    return this;
  }

  Bench calibrate(String standard) {
    return calibrate(standard, 25);
  }

  Bench calibrate(String standard, double celsius) {
    double molesPerLitre = molesPerLitre(standard, celsius);
    return tell("calibrate", standard)
        .read(3, electrode.millivolts(molesPerLitre, celsius), known(celsius));
  }

  private double molesPerLitre(String standard, double celsius) {
    return Optional.ofNullable(settings.standards().get(standard))
        .flatMap(known -> known.at(celsius))
        .orElseThrow()
        .molesPerLitre();
  }

  /** Reads a standard as an electrode would whose potential is off by so much. */
  Bench calibrateOff(String standard, double millivolts) {
    double molesPerLitre = molesPerLitre(standard, 25);
    return tell("calibrate", standard)
        .read(3, millivolts + electrode.millivolts(molesPerLitre, 25));
  }

  /** Measures a sample of a concentration in the unit of the probe's results. */
  Bench measure(double value) {
    return measure(value, 25);
  }

  Bench measure(double value, double celsius) {
    return tell("{\"do\":\"measure\"}").read(3, millivolts(value, celsius), known(celsius));
  }

  /** Reads what holds so much, as an instruction in single quotes says. */
  Bench read(String instruction, double value) {
    return tell(instruction.replace('\'', '"')).read(3, millivolts(value));
  }

  double millivolts(double value) {
    return millivolts(value, 25);
  }

  double millivolts(double value, double celsius) {
    return electrode.millivolts(settings.scale().molesPerLitre(value), celsius);
  }

  Bench pass(Duration span) {
    now = now.plus(span);
    routine.elapse(now);
    return this;
  }

  Bench conclude() {
    routine.conclude();
    return this;
  }

  /** Lets time pass without telling the routine. */
  Bench meanwhile(Duration span) {
    now = now.plus(span);
    return this;
  }

  Instant now() {
    return now;
  }

  static Temperature known(double celsius) {
    return new Temperature.Known(celsius, 0.2, false);
  }

  Bench forgetWhatWasSaid() {
    said.clear();
    return this;
  }

  List<Object> said() {
    return List.copyOf(said);
  }

  <T> List<T> all(Class<T> kind) {
    return kinds(kind).toList();
  }

  private <T> Stream<T> kinds(Class<T> kind) {
    return said.stream().filter(kind::isInstance).map(kind::cast);
  }

  private <T> T last(Class<T> kind) {
    return kinds(kind).reduce((a, b) -> b).orElseThrow();
  }

  Result result() {
    return last(Result.class);
  }

  Calibration calibration() {
    return last(Calibration.class);
  }

  Answer answer() {
    return last(Answer.class);
  }

  Notice notice() {
    return last(Notice.class);
  }

  State state() {
    return last(State.class);
  }
}
