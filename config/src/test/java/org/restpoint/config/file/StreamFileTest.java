package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.restpoint.config.file.Named.concentration;
import static org.restpoint.config.file.Named.electrode;
import static org.restpoint.config.file.Named.probe;
import static org.restpoint.config.file.Named.standard;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.Broker;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.HttpAddress;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.LogStyle;
import org.restpoint.config.station.MqttPayload;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.OwnTimes;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.Routine;
import org.restpoint.config.station.SettleRule;
import org.restpoint.config.station.Simulation;
import org.restpoint.config.station.Station;
import org.restpoint.config.station.TemperatureNumber;
import org.restpoint.config.station.TemperatureSource;

class StreamFileTest {

  @TempDir Path folder;
  private Fixture fixture;

  @BeforeEach
  void openFixture() {
    fixture = new Fixture(folder);
  }

  @Test
  void aStreamFileIsReadWhole() {
    Station station = fixture.understood(Fixture.example("stream.yaml"));

    assertThat(station.broker()).isEqualTo(new Broker.Embedded(0));
    assertThat(station.journal()).isEqualTo(folder.resolve("data/brook.db"));
    assertThat(station.http()).contains(new HttpAddress("::1", 0));
    assertThat(station.logs()).isEqualTo(LogStyle.JSON);
    assertThat(concentration(station, "n-10").relativeUncertainty()).isEqualTo(0.02);
    assertThat(concentration(station, "n-100").concentration())
        .isEqualTo(new Quantity(100_000, "ug/L"));
    assertThat(concentration(station, "n-100").relativeUncertainty()).isEqualTo(0.015);
    assertThat(standard(station, "salt").lot()).contains("17");
    assertThat(probe(station, "temp-1").electrode()).isEmpty();
    assertThat(probe(station, "temp-1").link())
        .isEqualTo(
            new LinkSettings.Mqtt(
                "brook/temperature",
                Optional.empty(),
                new MqttPayload.Json(
                    new MqttPayload.Places(
                        new Numbers(Optional.empty(), Optional.of(new TemperatureNumber.Celsius())),
                        Optional.empty(),
                        Optional.of("")),
                    Optional.empty()),
                new OwnTimes(Duration.ofMinutes(5), Duration.ofSeconds(2)),
                Duration.ofMinutes(5)));
    assertThat(probe(station, "no3").publishRaw()).isTrue();
    Electrode no3 = electrode(station, "no3");
    assertThat(no3.unit()).isEqualTo("umol/L");
    assertThat(no3.temperature())
        .isEqualTo(
            new TemperatureSource.FromProbe(
                "temp-1", Duration.ofSeconds(90), TemperatureSource.WhenStale.FLAG));
    assertThat(no3.settle().rule()).isEqualTo(new SettleRule.Consecutive(5, 0.2));
    assertThat(no3.calibrate().every()).isEqualTo(new Calibrate.Every.Span(Duration.ofHours(2)));
    assertThat(no3.routine()).isEqualTo(new Routine.EachInterval(Duration.ofMinutes(15)));
    Electrode chloride = electrode(station, "chloride");
    assertThat(chloride.basis()).isEmpty();
    assertThat(chloride.temperature()).isEqualTo(new TemperatureSource.Fixed(12, 2));
    assertThat(chloride.calibrate().every()).isEqualTo(new Calibrate.Every.Samples(10));
    assertThat(chloride.routine()).isEqualTo(new Routine.EachRest(Duration.ofMinutes(2)));
    LinkSettings.Serial polled = (LinkSettings.Serial) probe(station, "chloride").link();
    assertThat(polled.poll()).contains("READ\r\n");
    assertThat(polled.pollEvery()).isEqualTo(Duration.ofMillis(500));
    Electrode number = electrode(station, "number");
    assertThat(number.temperature()).isEqualTo(new TemperatureSource.Fixed(12, 1));
    assertThat(number.routine()).isEqualTo(new Routine.EachRest(Duration.ofMinutes(5)));
    assertThat(probe(station, "played").link())
        .isEqualTo(
            new LinkSettings.Recording(
                folder.resolve("recordings/fluoride.csv"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
    LinkSettings.Simulated simulated = (LinkSettings.Simulated) probe(station, "made-up").link();
    Simulation.Electrode madeUp = (Simulation.Electrode) simulated.simulation();
    assertThat(madeUp.offsetMillivolts()).isEqualTo(-200);
    assertThat(madeUp.creepMillivoltsPerHour()).isEqualTo(-1.5);
    assertThat(madeUp.seed()).isEqualTo(-7);
  }

  @Test
  void anIntervalMayLeaveJustEnoughTimeForADecision() {
    Station station =
        fixture.understood(
            Fixture.changed(
                "bench.yaml",
                "valid-for: 12 h }",
                "valid-for: 12 h }\n    routine: { every: 20002 ms }"));

    assertThat(electrode(station, "no3-a").routine())
        .isEqualTo(new Routine.EachInterval(Duration.ofMillis(20_002)));
  }
}
