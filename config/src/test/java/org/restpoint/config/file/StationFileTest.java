package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.restpoint.config.file.Named.concentration;
import static org.restpoint.config.file.Named.electrode;
import static org.restpoint.config.file.Named.probe;
import static org.restpoint.config.file.Named.standard;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.Broker;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Care;
import org.restpoint.config.station.Checks;
import org.restpoint.config.station.Compensation;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.HttpAddress;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.LogStyle;
import org.restpoint.config.station.LowEnd;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.Routine;
import org.restpoint.config.station.Settle;
import org.restpoint.config.station.SettleRule;
import org.restpoint.config.station.Simulation;
import org.restpoint.config.station.StandardSolution;
import org.restpoint.config.station.Station;
import org.restpoint.config.station.TemperatureSource;

class StationFileTest {

  @TempDir Path folder;
  private Fixture fixture;

  @BeforeEach
  void openFixture() {
    fixture = new Fixture(folder);
  }

  @Test
  void aBenchFileIsReadWhole() {
    Station station = fixture.understood(Fixture.example("bench.yaml"));

    assertThat(station.name()).isEqualTo("willow-bench");
    assertThat(station.broker())
        .isEqualTo(
            new Broker.Remote(
                URI.create("tcp://127.0.0.1:1883"),
                Optional.of("bench"),
                Optional.of(folder.resolve("secrets/broker"))));
    assertThat(station.journal()).isEqualTo(folder.resolve("willow-bench.db"));
    assertThat(station.http()).contains(new HttpAddress("127.0.0.1", 9464));
    assertThat(station.logs()).isEqualTo(LogStyle.PLAIN);
    assertThat(station.standards().keySet()).containsExactly("low", "mid", "high");
    assertThat(standard(station, "mid"))
        .isEqualTo(
            new StandardSolution(
                "mid",
                new StandardSolution.Value.OfConcentration(
                    new Quantity(20, "mg/L"), Optional.of("as-N"), 0.01),
                Optional.of("A18"),
                Optional.of(LocalDate.of(2027, 3, 1))));
    assertThat(probe(station, "no3-a").electrode())
        .contains(
            new Electrode(
                "nitrate",
                Optional.of("as-N"),
                "mg/L",
                new TemperatureSource.FromReading(),
                new Compensation.Ideal(),
                Optional.empty(),
                List.of(),
                new Settle(
                    new SettleRule.Consecutive(10, 0.1),
                    Duration.ofSeconds(20),
                    Duration.ofMinutes(10)),
                new Calibrate(
                    List.of("low", "mid", "high"),
                    Optional.of("mid"),
                    new Calibrate.Every.Samples(1),
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
                Optional.empty()));
  }

  @Test
  void careAndRenewalAreRead() {
    Electrode electrode =
        electrode(
            fixture.understood(
                Fixture.changed(
                    "bench.yaml",
                    "every: sample, slope: 90..103 %, valid-for: 12 h }",
                    "bracket: true, slope-every: 7 d }\n    care: { soak: 30 min }")),
            "no3-a");

    assertThat(electrode.care())
        .contains(new Care(Duration.ofMinutes(30), Duration.ofMinutes(5), Duration.ofDays(14)));
    assertThat(electrode.calibrate().bracket()).isTrue();
    assertThat(electrode.calibrate().slopeEvery()).contains(Duration.ofDays(7));
  }

  @Test
  void aSerialLinkKeepsItsPattern() {
    Station station = fixture.understood(Fixture.example("bench.yaml"));

    LinkSettings.Serial serial = (LinkSettings.Serial) probe(station, "no3-a").link();
    assertThat(serial.port().name()).isEqualTo("/dev/ttyUSB0");
    assertThat(serial.port().baud()).isEqualTo(9600);
    assertThat(serial.poll()).isEmpty();
    assertThat(serial.pollEvery()).isEqualTo(Duration.ofSeconds(1));
    assertThat(serial.noDataAfter()).isEqualTo(Duration.ofSeconds(30));
    var matcher = serial.line().matcher("E=+187.42 mV T=21.9 C");
    assertThat(matcher.matches()).isTrue();
    assertThat(matcher.group("millivolts")).isEqualTo("+187.42");
  }

  @Test
  void whatTheFileLeavesOutHasItsDefault() {
    Station station = fixture.understood(Fixture.example("smallest.yaml"));

    assertThat(station.broker()).isEqualTo(new Broker.Embedded(1883));
    assertThat(station.journal()).isEqualTo(folder.resolve("demo.db"));
    assertThat(station.http()).isEmpty();
    assertThat(probe(station, "no3-a").publishRaw()).isFalse();
    assertThat(probe(station, "no3-a").link())
        .isEqualTo(
            new LinkSettings.Simulated(
                new Simulation.Electrode(
                    List.of(
                        new Simulation.Visit(
                            new Quantity(20, "mg/L"), Optional.empty(), Optional.empty())),
                    new Simulation.Temperature(25, 0, Duration.ofDays(1)),
                    98,
                    0,
                    new Simulation.Response.Film(Duration.ofSeconds(8)),
                    new Simulation.Noise(0.05, 0, 0.8),
                    0,
                    1,
                    new Simulation.Resolution(0.01, 0.1)),
                Duration.ofSeconds(1),
                Duration.ofSeconds(30),
                List.of()));
    Electrode electrode = electrode(station, "no3-a");
    assertThat(electrode.settle())
        .isEqualTo(
            new Settle(
                new SettleRule.Forecast(new SettleRule.Within.Millivolts(1), true),
                Duration.ZERO,
                Duration.ofMinutes(10)));
    assertThat(electrode.calibrate())
        .isEqualTo(
            new Calibrate(
                List.of("low"),
                Optional.empty(),
                new Calibrate.Every.Never(),
                false,
                Optional.empty(),
                85,
                105,
                Duration.ofHours(24),
                new LowEnd.Straight(),
                Optional.empty(),
                2,
                0));
    assertThat(electrode.unit()).isEqualTo("mg/L");
    assertThat(electrode.compensation()).isEqualTo(new Compensation.Ideal());
    assertThat(electrode.activity()).isEmpty();
    assertThat(electrode.interferents()).isEmpty();
  }

  @Test
  void anAbsolutePathStaysAsItIs() {
    Station station =
        fixture.understood(
            Fixture.changed("bench.yaml", "journal: willow-bench.db", "journal: /var/lib/w.db"));

    assertThat(station.journal()).isEqualTo(Path.of("/var/lib/w.db"));
  }

  @Test
  void anAnchorIsFollowed() {
    String text =
        Fixture.changed("smallest.yaml", "calibrate: { standards", "calibrate: &c { standards")
            + """
              no3-b:
                analyte: nitrate
                basis: as-N
                link: { simulated: { solution: 5 mg/L } }
                temperature: { fixed: 22.5 Cel }
                calibrate: *c
            """;

    Station station = fixture.understood(text);

    assertThat(electrode(station, "no3-b").calibrate().standards()).containsExactly("low");
  }

  @Test
  void aByteOrderMarkIsPassedOver() {
    assertThat(fixture.understood("\uFEFF" + Fixture.example("smallest.yaml")).name())
        .isEqualTo("demo");
  }

  @Test
  void analytesAndTheirStandardsNeedABasisOnlyWhereThereIsAChoice() {
    String text =
        Fixture.changed("smallest.yaml", "analyte: nitrate\n    basis: as-N", "analyte: sodium")
            .replace("5 mg/L, basis: as-N", "1 umol/L");

    assertThat(concentration(fixture.understood(text), "low").basis()).isEmpty();
  }
}
