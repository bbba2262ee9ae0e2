package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.modbus.Devices;
import org.restpoint.adapters.modbus.DevicesOnLine;
import org.restpoint.adapters.modbus.DevicesOnNetwork;
import org.restpoint.adapters.modbus.RegisterTable;

/**
 * The example of Modbus runs as it stands, but for the port, the address, the broker's port and the
 * time between two asks, and reads devices with the registers that its comments describe.
 */
@EnabledOnOs(OS.LINUX)
@Timeout(300)
class ModbusExampleIT {

  private static final Path EXAMPLE = Path.of("..", "adapters", "examples", "modbus.yaml");
  private static final String PORT = "/dev/serial/by-id/usb-rs485-converter-if00-port0";
  private static final String ADDRESS = "192.168.4.7:502";

  @TempDir private Path folder;
  private final Devices devices = new Devices();

  private Path station(int port) throws IOException {
    String text = Files.readString(EXAMPLE);
    assertThat(text).contains(PORT, ADDRESS, "every: 2 s", "every: 5 s");
    return BenchStation.write(
        folder,
        text.replace(PORT, line().toString())
            .replace(ADDRESS, "127.0.0.1:" + port)
            .replace("broker: embedded", "broker: { embedded: { port: 0 } }")
            .replaceAll("every: [25] s", "every: 100 ms"));
  }

  private Path line() {
    return folder.resolve("converter");
  }

  private void devicesOfTheExample() {
    devices.hold(5, RegisterTable.INPUT, 0, 1874, 0xFFFB);
    int volts = Float.floatToIntBits(0.0921f);
    devices.hold(6, RegisterTable.HOLDING, 0x0100, volts & 0xFFFF, volts >>> 16);
    devices.hold(1, RegisterTable.INPUT, 40, 28_565);
  }

  private static double next(Rig rig, String probe, String number) {
    return rig.next(probe, "raw", any -> true).get(number).asDouble();
  }

  @Test
  void readsItsDevicesThroughALossAndEndsInPeace() throws Exception {
    devicesOfTheExample();
    DevicesOnNetwork network = new DevicesOnNetwork(devices, 0);
    AutoCloseable plugged = new DevicesOnLine(devices, line()).answering();
    Path station = station(network.port());
    try (AutoCloseable gateway = network.answering();
        RunningService service = RunningService.ready(station);
        Rig rig = Rig.connect(service.broker(), "drain-outlet")) {
      assertThat(gateway).isNotNull();
      assertThat(next(rig, "no3-inlet", "millivolts")).isCloseTo(187.4, within(1e-9));
      assertThat(next(rig, "no3-inlet", "celsius")).isCloseTo(-0.5, within(1e-9));
      assertThat(next(rig, "no3-outlet", "millivolts")).isCloseTo(92.1, within(1e-5));
      assertThat(next(rig, "water", "celsius")).isCloseTo(12.5, within(1e-9));

      plugged.close();
      assertThat(notice(rig, "no3-inlet", "port-lost").get("text").asText())
          .isEqualTo("serial port " + line() + " was lost while it was read");
      devices.hold(5, RegisterTable.INPUT, 0, 1900, 0x8000);
      plugged = new DevicesOnLine(devices, line()).answering();
      notice(rig, "no3-inlet", "port-back");
      assertThat(notice(rig, "no3-inlet", "answer-rejected").get("text").asText())
          .isEqualTo(
              "Modbus unit 5 on serial port %s gave an answer that is not a reading: register 1: it holds -32768, which stands for no value"
                  .formatted(line()));
      rig.next("no3-outlet", "raw", any -> true);
      assertThat(service.terminate()).isZero();
    } finally {
      plugged.close();
    }
    assertThat(codesKept(station)).containsOnlyOnce("port-lost", "port-back");
  }

  @Test
  void isSaidBackAsItWasUnderstood() throws IOException {
    assertThat(Ran.restpoint(folder, "check", station(502)).well().out())
        .contains(
            "probe     no3-inlet: Modbus unit 5 on serial port %s, 19200 baud, parity even, asked every 100 ms, millivolts from input register 0 (int16), celsius from input register 1 (int16)"
                .formatted(line()),
            "no3-outlet: Modbus unit 6 on serial port %s, 19200 baud, parity even, asked every 100 ms, volts from holding register 256 (float32)"
                .formatted(line()),
            "water: Modbus unit 1 at 127.0.0.1:502, asked every 100 ms, kelvin from input register 40 (uint16)");
  }

  private static JsonNode notice(Rig rig, String probe, String code) {
    return rig.next(probe, "notice", notice -> notice.get("code").asText().equals(code));
  }

  private List<String> codesKept(Path station) {
    return Ran.restpoint(folder, "records", station, "--of", "notices", "--as", "jsonl")
        .well()
        .json()
        .stream()
        .map(notice -> notice.get("code").asText())
        .toList();
  }
}
