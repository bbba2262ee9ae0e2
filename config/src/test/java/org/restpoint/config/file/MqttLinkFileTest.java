package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.MqttPayload;
import org.restpoint.config.station.MqttPayload.Places;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.OwnTimes;
import org.restpoint.config.station.PotentialNumber;
import org.restpoint.config.station.Station;
import org.restpoint.config.station.TemperatureNumber;
import org.restpoint.config.station.Thermometer;

/** What the links of a field's nodes are read as. */
class MqttLinkFileTest {

  private static final Duration TWO_SECONDS = Duration.ofSeconds(2);
  private static final Duration FIVE_MINUTES = Duration.ofMinutes(5);

  @TempDir Path folder;

  private LinkSettings link(String probe) {
    Station station = new Fixture(folder).understood(Fixture.example("field.yaml"));
    return Objects.requireNonNull(station.probes().get(probe)).link();
  }

  @Test
  void aLevelIsCapturedUnderTheProbesNameWhereNothingElseIsSaid() {
    assertThat(link("plain"))
        .isEqualTo(
            new LinkSettings.Mqtt(
                "field/+/mv",
                Optional.empty(),
                new MqttPayload.BareNumber(),
                new OwnTimes(FIVE_MINUTES, TWO_SECONDS),
                FIVE_MINUTES));
  }

  @Test
  void pointersLeadToAnyNumberAndToTheTime() {
    assertThat(link("timed"))
        .isEqualTo(
            new LinkSettings.Mqtt(
                "field/+/ise",
                Optional.of("node-7"),
                new MqttPayload.Json(
                    new Places(
                        new Numbers(
                            Optional.of(new PotentialNumber.Counts(0.0625, 0)),
                            Optional.of(new TemperatureNumber.Kelvin())),
                        Optional.of("/n"),
                        Optional.of("/k")),
                    Optional.of(new MqttPayload.Time("/ts", true))),
                new OwnTimes(Duration.ofSeconds(30), TWO_SECONDS),
                FIVE_MINUTES));
  }

  @Test
  void recordsOfPacksAreNamed() {
    assertThat(link("packed"))
        .isEqualTo(
            new LinkSettings.Mqtt(
                "field/+/senml",
                Optional.empty(),
                new MqttPayload.SenMl(
                    new Places(
                        new Numbers(
                            Optional.of(new PotentialNumber.Volts()),
                            Optional.of(new TemperatureNumber.Celsius())),
                        Optional.of("node-8:ise"),
                        Optional.of("node-8:temp"))),
                new OwnTimes(Duration.ofHours(1), TWO_SECONDS),
                FIVE_MINUTES));
    assertThat(((LinkSettings.Mqtt) link("air")).payload())
        .isEqualTo(
            new MqttPayload.SenMl(
                new Places(
                    new Numbers(
                        Optional.empty(),
                        Optional.of(new TemperatureNumber.Ohms(new Thermometer.Platinum(100)))),
                    Optional.empty(),
                    Optional.of("air:pt"))));
  }
}
