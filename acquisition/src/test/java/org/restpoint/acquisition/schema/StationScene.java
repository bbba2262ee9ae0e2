package org.restpoint.acquisition.schema;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.acquisition.probe.KeptResults;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.acquisition.station.StationRoutine;
import org.restpoint.config.station.Broker;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Checks;
import org.restpoint.config.station.Compensation;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.LogStyle;
import org.restpoint.config.station.LowEnd;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.Routine;
import org.restpoint.config.station.Settle;
import org.restpoint.config.station.SettleRule;
import org.restpoint.config.station.Simulation;
import org.restpoint.config.station.StandardSolution;
import org.restpoint.config.station.Station;
import org.restpoint.config.station.TemperatureSource;
import org.restpoint.stability.reading.Reading;

/** A station of one electrode and one thermometer that says every raw reading. */
final class StationScene {

  private StationScene() {}

  static List<JsonNode> said() {
    List<Object> said = new ArrayList<>();
    KeptResults kept = new KeptResults();
    Output output =
        new Output() {
          @Override
          public void event(Event event) {
            if (event instanceof SampleRecord record) {
              kept.keep(record);
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
        };
    StationRoutine routine = new StationRoutine(station(), Map.of(), output, kept, true);
    Instant now = Session.START;
    routine.begin(now);
    routine.instruct(
        now, "no3-b", InstructionReader.read("{\"id\":\"7\",\"do\":\"measure\"}").instruction());
    routine.instruct(
        now,
        Nitrate.PROBE,
        InstructionReader.read("{\"do\":\"calibrate\",\"standard\":\"low\"}").instruction());
    for (String told :
        List.of(
            "'grower':'Ada Fields','kind':'soil','latitude':42.03,'longitude':-93.5,'cooled':true",
            "'grower':'Ada Field','cooled':'','notes':'stony'",
            "'taken':'2199-01-01T00:00:00Z'")) {
      String json = "{'do':'sample','sample':{'number':'S-1',%s}}".formatted(told);
      routine.instruct(
          now, Nitrate.PROBE, InstructionReader.read(json.replace('\'', '"')).instruction());
    }
    for (int i = 0; i < 2; i++) {
      String json = "{\"id\":\"8\",\"do\":\"forget\",\"sample\":\"S-1\"}";
      routine.instruct(now, Nitrate.PROBE, InstructionReader.read(json).instruction());
    }
    for (int i = 1; i <= 5; i++) {
      Instant then = now.plusSeconds(i);
      routine.reading("temp-1", new Reading(then, OptionalDouble.empty(), OptionalDouble.of(24.5)));
      routine.reading(Nitrate.PROBE, Reading.ofMillivolts(then, Nitrate.millivolts(5)));
    }
    routine.reading(Nitrate.PROBE, Reading.of(now.plusSeconds(6), Nitrate.millivolts(5), 24.4));
    return said.stream().map(EventJson::write).map(Schemas::parse).toList();
  }

  static Station station() {
    LinkSettings link =
        new LinkSettings.Simulated(
            new Simulation.Thermometer(
                new Simulation.Temperature(24.5, 0, Duration.ofDays(1)),
                new Simulation.Resolution(0.01, 0.1)),
            Duration.ofSeconds(1),
            Duration.ofSeconds(30),
            List.of());
    Electrode electrode =
        new Electrode(
            "nitrate",
            Optional.of("as-N"),
            "mg/L",
            new TemperatureSource.FromProbe(
                "temp-1", Duration.ofSeconds(30), TemperatureSource.WhenStale.REFUSE),
            new Compensation.Ideal(),
            Optional.empty(),
            List.of(),
            new Settle(
                new SettleRule.AllOf(
                    List.of(
                        new SettleRule.Consecutive(5, 0.1),
                        new SettleRule.Drift(1, Duration.ofSeconds(3), 1, 3))),
                Duration.ofSeconds(3),
                Duration.ofMinutes(10)),
            new Calibrate(
                List.of("low"),
                Optional.empty(),
                new Calibrate.Every.Never(),
                false,
                Optional.empty(),
                90,
                103,
                Duration.ofHours(12),
                new LowEnd.Straight(),
                Optional.empty(),
                2,
                0),
            Checks.none(),
            new Routine.Instructed(),
            Optional.empty());
    StandardSolution low =
        new StandardSolution(
            "low",
            new StandardSolution.Value.OfConcentration(
                new Quantity(5, "mg/L"), Optional.of("as-N"), 0.005),
            Optional.empty(),
            Optional.empty());
    return new Station(
        Nitrate.STATION,
        new Broker.Embedded(0),
        Path.of("willow-bench.db"),
        Optional.empty(),
        LogStyle.PLAIN,
        Map.of("low", low),
        Map.of(),
        Map.of(
            Nitrate.PROBE,
            new Probe(Nitrate.PROBE, link, Optional.of(electrode), false),
            "temp-1",
            new Probe("temp-1", link, Optional.empty(), false)),
        Map.of());
  }
}
