package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.ModbusConnection;
import org.restpoint.config.station.ModbusRegister;
import org.restpoint.config.station.ModbusRegister.NumberType;
import org.restpoint.config.station.ModbusRegister.Order;
import org.restpoint.config.station.ModbusRegister.Table;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.PotentialNumber;
import org.restpoint.config.station.SerialPort;
import org.restpoint.config.station.SerialPort.Handshake;
import org.restpoint.config.station.SerialPort.Parity;
import org.restpoint.config.station.TemperatureNumber;
import org.restpoint.config.station.Thermometer;

/** Links to Modbus devices, and what those on one port must agree on. */
class ModbusTest {

  private static final String SECOND_ON_THE_LINE =
      """
        no3-c:
          analyte: nitrate
          basis: as-N
          link:
            modbus:
              port: /dev/ttyUSB0
              baud: 9600
              parity: none
              stop-bits: 2
              dtr: false
              rts: false
              unit: 6
              millivolts: { register: 0, table: input, as: int16 }
          temperature: { fixed: 12 Cel }
          calibrate: { standards: [mid] }
      """
          .indent(0);

  @TempDir Path folder;

  private LinkSettings link(String text, String probe) {
    return Objects.requireNonNull(new Fixture(folder).understood(text).probes().get(probe)).link();
  }

  @Test
  void everyKeyOfALineIsTaken() {
    assertThat(link(Fixture.example("modbus.yaml"), "no3-a"))
        .isEqualTo(
            new LinkSettings.Modbus(
                new ModbusConnection.Line(
                    new SerialPort(
                        "/dev/ttyUSB0", 9600, 8, Parity.NONE, 2, Handshake.NONE, false, false)),
                5,
                new Numbers(
                    Optional.of(new PotentialNumber.Millivolts()),
                    Optional.of(new TemperatureNumber.Ohms(new Thermometer.Platinum(1000)))),
                Optional.of(
                    new ModbusRegister(
                        Table.INPUT,
                        12,
                        NumberType.INT16,
                        Order.BIG,
                        Order.BIG,
                        0.1,
                        -5,
                        OptionalDouble.of(-32_768))),
                Optional.of(
                    new ModbusRegister(
                        Table.HOLDING,
                        0xABCD,
                        NumberType.FLOAT32,
                        Order.LITTLE,
                        Order.LITTLE,
                        1,
                        0,
                        OptionalDouble.of(-9999.9))),
                Duration.ofSeconds(5),
                Duration.ofMillis(300),
                3,
                Duration.ofMinutes(1)));
  }

  @Test
  void whatIsLeftOutIsAsTheSpecificationHasIt() {
    String plain =
        Fixture.changed(
            "modbus.yaml",
            "modbus: { tcp: \"[fe80::1]\", unit: 1,",
            "modbus: { port: /dev/ttyS1, unit: 1,");
    LinkSettings.Modbus link = (LinkSettings.Modbus) link(plain, "temp-1");

    assertThat(link.bus())
        .isEqualTo(
            new ModbusConnection.Line(
                new SerialPort(
                    "/dev/ttyS1", 19_200, 8, Parity.EVEN, 1, Handshake.NONE, true, true)));
    assertThat(link.every()).isEqualTo(Duration.ofSeconds(1));
    assertThat(link.answerWithin()).isEqualTo(Duration.ofSeconds(1));
    assertThat(link.retries()).isEqualTo(1);
    assertThat(link.noDataAfter()).isEqualTo(Duration.ofSeconds(30));
    assertThat(link.numbers().temperature()).contains(new TemperatureNumber.Kelvin());
  }

  @Test
  void aDeviceOnTheNetworkHasAnAddressAndSilenceIsMoreThanAFewPolls() {
    String text = Fixture.example("modbus.yaml");
    LinkSettings.Modbus link = (LinkSettings.Modbus) link(text, "no3-b");

    assertThat(link.bus()).isEqualTo(new ModbusConnection.Network("192.168.4.7", 1502));
    assertThat(link.noDataAfter()).isEqualTo(Duration.ofMinutes(3));
    assertThat(((LinkSettings.Modbus) link(text, "temp-1")).bus())
        .isEqualTo(new ModbusConnection.Network("fe80::1", 502));
  }

  @Test
  void aBitPatternForAMissingValueIsReadByTheNumbersType() {
    assertThat(NumberType.UINT16.number(0xFFFF)).isEqualTo(65_535);
    assertThat(NumberType.INT32.number(0x8000_0000L)).isEqualTo(Integer.MIN_VALUE);
    assertThat(NumberType.UINT32.number(0xFFFF_FFFFL)).isEqualTo(4_294_967_295.0);
    assertThat(NumberType.FLOAT32.number(0xC61C3FF9L)).isEqualTo(-9999.9931640625);
    assertThat(NumberType.FLOAT64.number(0x7FF8_0000_0000_0000L)).isNaN();
  }

  @Test
  void probesOnOnePortAreUnderstoodWhenTheyAgree() {
    assertThat(link(Fixture.example("modbus.yaml") + SECOND_ON_THE_LINE, "no3-c"))
        .isInstanceOf(LinkSettings.Modbus.class);
  }

  @Test
  void whatProbesOnOnePortDoNotAgreeOnIsToldWithBothPlaces() {
    String differing =
        SECOND_ON_THE_LINE
            .replace("        baud: 9600\n", "")
            .replace("stop-bits: 2", "stop-bits: 1");

    assertThat(new Fixture(folder).problems(Fixture.example("modbus.yaml") + differing))
        .containsExactly(
            "probes.no3-c.link.modbus.baud (line 49): expected 9600, as probe no3-a has it on this"
                + " port (line 13); found nothing",
            "probes.no3-c.link.modbus.stop-bits (line 51): expected 2, as probe no3-a has it on"
                + " this port (line 15); found 1");
  }

  @Test
  void aLineOfTextAndABusDoNotShareAPort() {
    String serial =
        SECOND_ON_THE_LINE.substring(0, SECOND_ON_THE_LINE.indexOf("      modbus:"))
            + "      serial: { port: /dev/ttyUSB0, line: '(?<millivolts>.+)' }\n"
            + SECOND_ON_THE_LINE.substring(SECOND_ON_THE_LINE.indexOf("    temperature:"));

    assertThat(new Fixture(folder).problems(Fixture.example("modbus.yaml") + serial))
        .containsExactly(
            "probes.no3-c.link.serial.port (line 48): expected a port of its own; found"
                + " /dev/ttyUSB0, already used by probe no3-a (line 12)");
  }
}
