package org.restpoint.acquisition.station;

import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.config.station.Broker;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Care;
import org.restpoint.config.station.Checks;
import org.restpoint.config.station.Compensation;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.LogStyle;
import org.restpoint.config.station.LowEnd;
import org.restpoint.config.station.Moves;
import org.restpoint.config.station.MqttPayload;
import org.restpoint.config.station.OwnTimes;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.Routine;
import org.restpoint.config.station.Settle;
import org.restpoint.config.station.SettleRule;
import org.restpoint.config.station.StandardSolution;
import org.restpoint.config.station.Station;
import org.restpoint.config.station.TemperatureSource;

/** Stations for tests: nitrate electrodes with standards of 10 and 100 mg/L, and thermometers. */
final class Stations {

  private final Map<String, Probe> probes = new LinkedHashMap<>();
  private Routine routine = new Routine.Instructed();
  private Moves moves = new Moves.Told();
  private Optional<Care> care = Optional.empty();
  private Checks checks = Checks.none();

  Stations routine(Routine how) {
    routine = how;
    return this;
  }

  Stations moves(Moves how) {
    moves = how;
    return this;
  }

  /** Asks for a rinse after each sample, and for checks with a standard that does not calibrate. */
  Stations careful() {
    care =
        Optional.of(new Care(Duration.ofMinutes(20), Duration.ofMinutes(5), Duration.ofDays(14)));
    checks =
        new Checks(
            Optional.of(
                new Checks.CheckStandard(
                    Optional.of("second"),
                    new Calibrate.Every.Never(),
                    Optional.empty(),
                    OptionalDouble.empty())),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    return this;
  }

  Stations thermometer(String name) {
    return probe(name, Optional.empty(), false);
  }

  Stations electrode(String name, TemperatureSource temperature) {
    return probe(name, Optional.of(electrode(temperature)), false);
  }

  Stations publishingRaw(String name, TemperatureSource temperature) {
    return probe(name, Optional.of(electrode(temperature)), true);
  }

  private Stations probe(String name, Optional<Electrode> electrode, boolean raw) {
    LinkSettings link =
        new LinkSettings.Mqtt(
            "bench/" + name,
            Optional.empty(),
            new MqttPayload.BareNumber(),
            new OwnTimes(Duration.ofMinutes(5), Duration.ZERO),
            Duration.ofMinutes(1));
    probes.put(name, new Probe(name, link, electrode, raw));
    return this;
  }

  private Electrode electrode(TemperatureSource temperature) {
    return new Electrode(
        "nitrate",
        Optional.of("as-N"),
        "mg/L",
        temperature,
        new Compensation.Ideal(),
        Optional.empty(),
        List.of(),
        new Settle(
            new SettleRule.Consecutive(3, 0.1), Duration.ofSeconds(2), Duration.ofSeconds(35)),
        new Calibrate(
            List.of("low", "high"),
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
        checks,
        routine,
        care,
        moves);
  }

  Station station() {
    return new Station(
        "willow-bench",
        new Broker.Embedded(0),
        Path.of("willow-bench.db"),
        Optional.empty(),
        LogStyle.PLAIN,
        Map.of(
            "low",
            standard("low", 10),
            "high",
            standard("high", 100),
            "second",
            standard("second", 50)),
        Map.of(),
        probes,
        Map.of());
  }

  private static StandardSolution standard(String name, double value) {
    return new StandardSolution(
        name,
        new StandardSolution.Value.OfConcentration(
            new Quantity(value, "mg/L"), Optional.of("as-N"), 0.01),
        Optional.empty(),
        Optional.empty());
  }
}
