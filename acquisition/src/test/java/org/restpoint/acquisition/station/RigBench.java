package org.restpoint.acquisition.station;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.State;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.acquisition.probe.KeptResults;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.acquisition.probe.ProbeMemory;
import org.restpoint.config.station.Station;
import org.restpoint.stability.reading.Reading;

/**
 * A station with a made electrode that is dipped into cups; a reading a second, in no time at all.
 * It answers a new solution with a time constant of a second and a half.
 */
final class RigBench implements Output {

  static final String PROBE = "no3-a";

  private static final double SECONDS_TO_ANSWER = 1.5;

  final List<Event> events = new ArrayList<>();
  final List<Answer> answers = new ArrayList<>();
  private final Station station;
  private final KeptResults kept = new KeptResults();
  private final Random random = new Random(7);
  private StationRoutine routine;
  private Instant now = Instant.parse("2026-04-02T06:00:00Z");
  private double millivolts = 250;

  RigBench(Station station) {
    this.station = station;
    routine = new StationRoutine(station, Map.of(), this, kept, false);
    routine.begin(now);
  }

  @Override
  public void event(Event event) {
    if (event instanceof Result result) {
      kept.keep(result);
    }
    events.add(event);
  }

  @Override
  public void answer(Answer answer) {
    answers.add(answer);
  }

  @Override
  public void confide(Answer answer) {
    answer(answer);
  }

  /** 97 % of the slope at 22 °C, in mg/L. */
  static double millivolts(double milligramsPerLitre) {
    return 300 - 0.97 * 58.56 * Math.log10(milligramsPerLitre / 10);
  }

  /** Stands in a solution for some seconds. */
  RigBench stand(double milligramsPerLitre, int seconds) {
    for (int i = 0; i < seconds; i++) {
      millivolts +=
          (millivolts(milligramsPerLitre) - millivolts) * -Math.expm1(-1 / SECONDS_TO_ANSWER);
      read(millivolts + 0.01 * random.nextGaussian());
    }
    return this;
  }

  /** Stands in a solution until its reading has begun. */
  RigBench standUntilRead(double milligramsPerLitre) {
    for (int i = 0; i < 30 && !state().state().startsWith("reading"); i++) {
      stand(milligramsPerLitre, 1);
    }
    return this;
  }

  /** Is in the air for some seconds. */
  RigBench air(int seconds) {
    for (int i = 0; i < seconds; i++) {
      millivolts = 100 * random.nextGaussian();
      read(millivolts);
    }
    return this;
  }

  /** Stands in something that never comes to rest. */
  RigBench restless(double milligramsPerLitre, int seconds) {
    double from = millivolts(milligramsPerLitre);
    for (int i = 0; i < seconds; i++) {
      millivolts = from + 0.4 * i;
      read(millivolts);
    }
    return this;
  }

  private void read(double value) {
    now = now.plusSeconds(1);
    routine.reading(PROBE, Reading.ofMillivolts(now, value));
  }

  /** Gives an instruction; the answers to it so far. */
  List<Answer> tell(String json) {
    now = now.plusMillis(10);
    int before = answers.size();
    routine.instruct(now, PROBE, InstructionReader.read(json.replace('\'', '"')).instruction());
    return List.copyOf(answers.subList(before, answers.size()));
  }

  RigBench pass(int seconds) {
    now = now.plusSeconds(seconds);
    routine.elapse(now);
    return this;
  }

  /** The service ends and begins again, with what it remembers as the journal keeps it. */
  RigBench restarted() {
    String json = EventJson.write(routine.memory(PROBE).orElseThrow());
    try {
      ProbeMemory memory = EventJson.mapper().readValue(json, ProbeMemory.class);
      now = now.plusSeconds(60);
      routine = new StationRoutine(station, Map.of(PROBE, memory), this, kept, false);
      routine.begin(now);
      return this;
    } catch (JsonProcessingException e) {
      throw new AssertionError(e);
    }
  }

  Answer answer() {
    return answers.get(answers.size() - 1);
  }

  State state() {
    return last(State.class);
  }

  Notice notice() {
    return last(Notice.class);
  }

  /** Something makes the last result doubtful, as a check that fails does. */
  void flagLastResult(String flag) {
    kept.keep(last(Result.class).withFlag(flag));
  }

  <T> T last(Class<T> kind) {
    return events.stream()
        .filter(kind::isInstance)
        .map(kind::cast)
        .reduce((a, b) -> b)
        .orElseThrow();
  }

  List<String> notices() {
    return events.stream()
        .filter(Notice.class::isInstance)
        .map(event -> ((Notice) event).code())
        .toList();
  }
}
