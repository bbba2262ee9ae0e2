package org.restpoint.acquisition.station;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.RawReading;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.acquisition.probe.KeptResults;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.acquisition.probe.ProbeMemory;
import org.restpoint.stability.reading.Reading;

/** A station under the hand of a test; keeps all that is said. */
final class Site implements Output {

  static final Instant START = Instant.parse("2026-04-02T14:00:00Z");

  final StationRoutine routine;
  final List<Event> events = new ArrayList<>();
  final List<Answer> answers = new ArrayList<>();
  private final KeptResults kept;
  private final Stations stations;
  private Instant now;

  private Site(
      Stations stations,
      Map<String, ProbeMemory> memories,
      KeptResults kept,
      boolean allRaw,
      Instant start) {
    this.stations = stations;
    this.kept = kept;
    now = start;
    routine = new StationRoutine(stations.station(), memories, this, kept, allRaw);
    routine.begin(start);
  }

  static Site of(Stations stations) {
    return new Site(stations, Map.of(), new KeptResults(), false, START);
  }

  static Site publishingAllRaw(Stations stations) {
    return new Site(stations, Map.of(), new KeptResults(), true, START);
  }

  /** The same station after a restart, with what one of its probes remembers. */
  Site restarted(String probe) {
    return new Site(stations, Map.of(probe, routine.memory(probe).orElseThrow()), kept, false, now);
  }

  @Override
  public void event(Event event) {
    if (event instanceof Result result) {
      kept.keep(result);
    } else if (event instanceof SampleRecord record) {
      kept.keep(record);
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

  Result result() {
    return all(Result.class).stream().reduce((a, b) -> b).orElseThrow();
  }

  <T> List<T> all(Class<T> kind) {
    return events.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  List<RawReading> raw() {
    return all(RawReading.class);
  }

  Site read(String probe, double millivolts) {
    for (int i = 0; i < 3; i++) {
      now = now.plusSeconds(1);
      assertThat(routine.reading(probe, Reading.ofMillivolts(now, millivolts))).isTrue();
    }
    return this;
  }

  Site tell(String probe, String json) {
    return tell(probe, InstructionReader.read(json.replace('\'', '"')).instruction().task());
  }

  Site tell(String probe, Instruction.Task task) {
    routine.instruct(now, probe, new Instruction(Optional.of("7"), task));
    return this;
  }

  /** Two standards read at rest on an ideal slope at 22 °C or so. */
  Site calibrate(String probe) {
    return tell(probe, new Instruction.Calibrate("low"))
        .read(probe, 300)
        .tell(probe, new Instruction.Calibrate("high"))
        .read(probe, 243);
  }

  Site measure(String probe, double millivolts) {
    return tell(probe, new Instruction.Measure(Optional.empty(), Optional.empty(), false))
        .read(probe, millivolts);
  }

  Site thermometer(double celsius) {
    routine.reading("temp-1", new Reading(now, OptionalDouble.empty(), OptionalDouble.of(celsius)));
    return this;
  }

  Site meanwhile(Duration span) {
    now = now.plus(span);
    return this;
  }

  Instant now() {
    return now;
  }
}
