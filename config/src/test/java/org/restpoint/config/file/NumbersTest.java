package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.PotentialNumber;
import org.restpoint.config.station.SerialPort;
import org.restpoint.config.station.SerialPort.Handshake;
import org.restpoint.config.station.SerialPort.Parity;
import org.restpoint.config.station.Station;
import org.restpoint.config.station.TemperatureNumber;
import org.restpoint.config.station.Thermometer;

/** What a device's numbers are, and how its port is opened. */
class NumbersTest {

  private static final String BOTH = "'(?<counts>\\d+) (?<ohms>[.\\d]+)', scale: -62.5 uV";

  @TempDir Path folder;

  private LinkSettings.Serial serial(String keys) {
    Station station =
        new Fixture(folder)
            .understood(
                """
                station: a
                broker: embedded
                standards: { mid: { concentration: 20 mg/L, basis: as-N } }
                probes:
                  no3-a:
                    analyte: nitrate
                    basis: as-N
                    link: { serial: { port: /dev/ttyS0, %s } }
                    temperature: { from: reading }
                    calibrate: { standards: [mid] }
                """
                    .formatted(keys));
    return (LinkSettings.Serial) Objects.requireNonNull(station.probes().get("no3-a")).link();
  }

  private Numbers numbers(String keys) {
    return serial(keys).numbers();
  }

  private Thermometer thermometer(String written) {
    return ((TemperatureNumber.Ohms)
            numbers("line: " + BOTH + ", thermometer: " + written).temperature().orElseThrow())
        .thermometer();
  }

  @Test
  void countsHaveAScaleAndAnOffset() {
    assertThat(numbers("line: " + BOTH + ", offset: 2.048 V, thermometer: pt1000").potential())
        .contains(new PotentialNumber.Counts(-0.0625, 2048));
  }

  @ParameterizedTest
  @CsvSource({"millivolts, celsius", "volts, kelvin", "microvolts, fahrenheit"})
  void aGroupsNameIsItsUnit(String potential, String temperature) {
    Numbers numbers = numbers("line: '(?<%s>.+) (?<%s>.+)'".formatted(potential, temperature));

    assertThat(numbers.potential()).map(PotentialNumber::key).contains(potential);
    assertThat(numbers.temperature()).map(TemperatureNumber::key).contains(temperature);
  }

  @Test
  void aThermometersResistanceIsToldByItsKind() {
    assertThat(thermometer("pt100")).isEqualTo(new Thermometer.Platinum(100));
    assertThat(thermometer("{ platinum: 1000.2 Ohm }")).isEqualTo(new Thermometer.Platinum(1000.2));
    assertThat(thermometer("{ beta: 3435 K, resistance: 10 kOhm, at: 25 Cel }"))
        .isEqualTo(new Thermometer.Beta(10_000, 25, 3435));
    assertThat(thermometer("{ a: 1.129e-3, b: 2.341e-4, c: 8.775e-8 }"))
        .isEqualTo(new Thermometer.SteinhartHart(1.129e-3, 2.341e-4, 8.775e-8));
  }

  @Test
  void aPortIsOpenedAsItIsWritten() {
    String line = "line: '(?<millivolts>.+) (?<celsius>.+)'";

    assertThat(serial(line).port())
        .isEqualTo(
            new SerialPort("/dev/ttyS0", 9600, 8, Parity.NONE, 1, Handshake.NONE, true, true));
    assertThat(
            serial(
                    line
                        + ", baud: 1200, data-bits: 7, parity: even, stop-bits: 2,"
                        + " handshake: xon-xoff, dtr: false, rts: false")
                .port())
        .isEqualTo(
            new SerialPort(
                "/dev/ttyS0", 1200, 7, Parity.EVEN, 2, Handshake.XON_XOFF, false, false));
  }
}
