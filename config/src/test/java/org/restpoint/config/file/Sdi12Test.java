package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.config.station.LinkSettings.Sdi12;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.PotentialNumber;
import org.restpoint.config.station.SensorCommand;
import org.restpoint.config.station.SensorCommand.Kind;
import org.restpoint.config.station.SerialPort;
import org.restpoint.config.station.SerialPort.Handshake;
import org.restpoint.config.station.SerialPort.Parity;
import org.restpoint.config.station.TemperatureNumber;

/** Sensors on an SDI-12 bus. */
class Sdi12Test {

  private static final SerialPort CONVERTER =
      new SerialPort("/dev/ttyUSB0", 9600, 8, Parity.NONE, 1, Handshake.NONE, true, true);

  @TempDir Path folder;

  private Sdi12 sensor(String text, String probe) {
    return (Sdi12)
        Objects.requireNonNull(new Fixture(folder).understood(text).probes().get(probe)).link();
  }

  @Test
  void aSensorIsReadAsItIsWritten() {
    assertThat(sensor(Fixture.example("sdi12.yaml"), "no3-well"))
        .isEqualTo(
            new Sdi12(
                CONVERTER,
                '0',
                new SensorCommand(Kind.CONCURRENT, 1),
                true,
                new Numbers(
                    Optional.of(new PotentialNumber.Millivolts()),
                    Optional.of(new TemperatureNumber.Celsius())),
                OptionalInt.of(1),
                OptionalInt.of(2),
                Duration.ofMinutes(15),
                Duration.ofMillis(500),
                3,
                Duration.ofHours(1)));
  }

  @Test
  void whatIsLeftOutIsUsualAndSilenceGoesByTheInterval() {
    Sdi12 usual = sensor(Fixture.example("sdi12.yaml"), "nh4-well");

    assertThat(usual)
        .isEqualTo(
            new Sdi12(
                CONVERTER,
                'b',
                new SensorCommand(Kind.ALONE, 0),
                false,
                new Numbers(Optional.of(new PotentialNumber.Counts(0.0625, 0)), Optional.empty()),
                OptionalInt.of(9),
                OptionalInt.empty(),
                Duration.ofSeconds(10),
                Duration.ofSeconds(1),
                2,
                Duration.ofMinutes(1)));
    assertThat(sensor(Fixture.example("sdi12.yaml"), "water").noDataAfter())
        .isEqualTo(Duration.ofSeconds(90));
  }

  @ParameterizedTest
  @ValueSource(strings = {"M", "M9", "C", "C3", "R0", "R9"})
  void aCommandIsWrittenAsItIsKnown(String command) {
    String text = Fixture.changed("sdi12.yaml", "command: C1", "command: " + command);

    assertThat(sensor(text, "no3-well").command().key()).isEqualTo(command);
  }

  @Test
  void eachProbeThatDoesNotAgreeOnThePortIsTold() {
    String text =
        Fixture.changed("sdi12.yaml", "address: \"0\"", "address: \"0\"\n        parity: even");

    assertThat(new Fixture(folder).problems(text))
        .containsExactly(
            "probes.nh4-well.link.sdi12.parity (line 30): expected even, as probe no3-well has it"
                + " on this port (line 14); found nothing",
            "probes.water.link.sdi12.parity (line 39): expected even, as probe no3-well has it on"
                + " this port (line 14); found nothing");
  }
}
