package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.restpoint.config.station.DecimalMark;
import org.restpoint.config.station.LineFormat;
import org.restpoint.config.station.LineFormat.Checksum;
import org.restpoint.config.station.LineFormat.Encoding;
import org.restpoint.config.station.LineFormat.End;
import org.restpoint.config.station.LinkSettings.Serial;
import org.restpoint.config.station.Station;

/** How lines come out of a port's bytes, and whose they are. */
class SerialLineTest {

  @TempDir Path folder;

  private Serial serial(String example, String probe) {
    Station station = new Fixture(folder).understood(example);
    return (Serial) Objects.requireNonNull(station.probes().get(probe)).link();
  }

  private Serial serial(String key) {
    return serial(Fixture.changed("bench.yaml", "baud: 9600", key), "no3-a");
  }

  @Test
  void twoProbesMaySpeakOnOnePortByChannels() {
    Serial first = serial(Fixture.example("serial.yaml"), "no3-1");
    Serial second = serial(Fixture.example("serial.yaml"), "no3-2");

    assertThat(first.channel()).contains("1");
    assertThat(second.channel()).contains("2");
    assertThat(second.port()).isEqualTo(first.port());
    assertThat(first.format())
        .isEqualTo(new LineFormat(new End.CrOrLf(), Encoding.LATIN_1, Checksum.CRC_16_MODBUS));
  }

  @Test
  void twoProbesMayPickTheirNumbersOutOfOneLine() {
    Serial electrode = serial(Fixture.example("serial.yaml"), "no3-3");
    Serial thermometer = serial(Fixture.example("serial.yaml"), "water");

    assertThat(electrode.channel()).isEmpty();
    assertThat(electrode.decimal()).isEqualTo(DecimalMark.COMMA);
    assertThat(thermometer.decimal()).isEqualTo(DecimalMark.POINT);
    assertThat(electrode.format())
        .isEqualTo(thermometer.format())
        .isEqualTo(new LineFormat(new End.Width(24), Encoding.UTF_8, Checksum.NONE));
  }

  @Test
  void aTerminatorIsACharacterOrTheUsualOnes() {
    assertThat(serial("terminator: ;").format().end()).isEqualTo(new End.Terminator(";"));
    assertThat(serial("terminator: \"\\x03\"").format().end())
        .isEqualTo(new End.Terminator("\u0003"));
    assertThat(serial("terminator: cr-or-lf").format().end()).isEqualTo(new End.CrOrLf());
    assertThat(serial("parity: none").format().end()).isEqualTo(new End.CrOrLf());
  }

  @ParameterizedTest
  @EnumSource(Checksum.class)
  void aChecksumIsCalledByItsName(Checksum checksum) {
    String word = checksum.name().toLowerCase(Locale.ROOT).replace('_', '-');

    assertThat(serial("checksum: " + word).format().checksum()).isEqualTo(checksum);
  }
}
