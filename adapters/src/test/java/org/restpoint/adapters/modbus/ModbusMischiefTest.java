package org.restpoint.adapters.modbus;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.serial.PortSettings;
import org.restpoint.adapters.wire.TcpAddress;

/** Several probes on one real wire, whose devices do what devices do. */
@Timeout(120)
@EnabledOnOs(OS.LINUX)
class ModbusMischiefTest {

  private static final Duration PATIENCE = Duration.ofMillis(300);

  private final Devices devices = new Devices();
  private final CollectingListener heardA = new CollectingListener();
  private final CollectingListener heardB = new CollectingListener();
  private final List<AutoCloseable> open = new ArrayList<>();

  @TempDir private Path folder;

  @BeforeEach
  void twoDevices() {
    devices.hold(5, 100, 5.5);
    devices.hold(6, 200, 6.5);
  }

  @AfterEach
  void closeAll() throws Exception {
    for (AutoCloseable each : open) {
      each.close();
    }
  }

  private DevicesOnLine line() throws Exception {
    DevicesOnLine line = new DevicesOnLine(devices, folder.resolve("converter"));
    open.add(line.answering());
    return line;
  }

  private Link started(ModbusBus bus, int unit, int address, CollectingListener listener) {
    Link link = bus.link(ModbusProbes.probe(unit, address, PATIENCE, 1), listener);
    open.add(0, link);
    link.start();
    return link;
  }

  private ModbusBus rtu() {
    return ModbusBus.rtu(
        PortSettings.plain(folder.resolve("converter").toString(), 19_200),
        folder.resolve("native"),
        InstantSource.system(),
        System::nanoTime);
  }

  private static ModbusBus tcp(int port) {
    return ModbusBus.tcp(
        new TcpAddress("127.0.0.1", port), InstantSource.system(), System::nanoTime);
  }

  private static void reads(CollectingListener listener, double millivolts) {
    listener.readings().clear();
    assertThat(listener.nextReading().millivolts()).hasValue(millivolts);
    assertThat(listener.nextReading().millivolts()).hasValue(millivolts);
  }

  private static String rejection(CollectingListener listener) {
    return listener.nextTrouble("answer-rejected").text();
  }

  @Test
  void severalProbesAreReadOverOneLine() throws Exception {
    line();
    ModbusBus bus = rtu();
    started(bus, 5, 100, heardA);
    started(bus, 6, 200, heardB);
    reads(heardA, 5.5);
    reads(heardB, 6.5);
    devices.hold(6, 200, 7.5);
    heardB.nextReading();
    reads(heardB, 7.5);
  }

  @Test
  void everyMischiefOnALineIsToldAndReadingGoesOn() throws Exception {
    DevicesOnLine line = line();
    Link link = started(rtu(), 5, 100, heardA);
    reads(heardA, 5.5);

    devices.garble();
    assertThat(rejection(heardA))
        .startsWith("Modbus unit 5 on serial port " + folder.resolve("converter"))
        .contains("no sound frame came, but 13 bytes: 05 04 08 40 06");
    reads(heardA, 5.5);
    devices.breakOff();
    devices.spoil(frame -> RtuFraming.frame(7, new byte[] {4, 2, 0, 0}));
    devices.spoil(frame -> new byte[20_000]);
    Eventually.become("four rejected", () -> link.counts().rejected() == 4);
    reads(heardA, 5.5);
    byte[] noise = new byte[500];
    new Random(3).nextBytes(noise);
    for (int burst = 0; burst < 20; burst++) {
      line.send(noise);
    }
    reads(heardA, 5.5);
    devices.beSilent();
    devices.beSilent();
    assertThat(heardA.nextTrouble("no-answer"))
        .isEqualTo(
            new LinkTrouble(
                "no-answer",
                "Modbus unit 5 on serial port %s did not answer"
                    .formatted(folder.resolve("converter")),
                "Check that the device is on, its unit (here: 5), speed and parity (here: 19200"
                    + " baud, parity none), A and B of the wiring, and its termination"));
    reads(heardA, 5.5);
    LinkCounts counts = link.counts();
    assertThat(counts.accepted()).isPositive();
  }

  @Test
  void aDeviceThatIsLateIsNotTakenForAnotherRegister() throws Exception {
    line();
    devices.hold(5, 300, -3.5);
    ModbusBus bus = rtu();
    started(bus, 5, 100, heardA);
    started(bus, 5, 300, heardB);
    reads(heardA, 5.5);
    reads(heardB, -3.5);
    for (int times = 0; times < 5; times++) {
      devices.beLate();
      heardA.readings().clear();
      heardB.readings().clear();
      assertThat(heardA.nextReadings(3)).allMatch(r -> r.millivolts().getAsDouble() == 5.5);
      assertThat(heardB.nextReadings(3)).allMatch(r -> r.millivolts().getAsDouble() == -3.5);
    }
  }

  @Test
  void aDeviceThatIsSwitchedOffKeepsNobodyElseFromBeingRead() throws Exception {
    line();
    ModbusBus bus = rtu();
    Link away = started(bus, 9, 100, heardA);
    started(bus, 6, 200, heardB);
    assertThat(heardA.nextTrouble("no-answer").text()).startsWith("Modbus unit 9 ");
    reads(heardB, 6.5);
    devices.hold(9, 100, 9.5);
    reads(heardA, 9.5);
    assertThat(away.check().condition()).isEqualTo(Condition.READING);
  }

  @Test
  void anotherLineBehindTheSameNameIsReadOn() throws Exception {
    DevicesOnLine first = new DevicesOnLine(devices, folder.resolve("converter"));
    AutoCloseable answering = first.answering();
    ModbusBus bus = rtu();
    started(bus, 5, 100, heardA);
    started(bus, 6, 200, heardB);
    reads(heardA, 5.5);
    reads(heardB, 6.5);
    answering.close();
    assertThat(heardA.nextTrouble("port-lost").text()).contains("was lost while it was read");
    line();
    heardA.nextTrouble("port-back");
    reads(heardA, 5.5);
    reads(heardB, 6.5);
    assertThat(heardB.troubles()).isEmpty();
  }

  @Test
  void everyMischiefOnAConnectionIsToldAndReadingGoesOn() throws Exception {
    DevicesOnNetwork network = new DevicesOnNetwork(devices, 0);
    open.add(network.answering());
    ModbusBus bus = tcp(network.port());
    Link link = started(bus, 5, 100, heardA);
    started(bus, 6, 200, heardB);
    reads(heardA, 5.5);
    reads(heardB, 6.5);
    devices.spoil(frame -> new byte[] {'H', 'T', 'T', 'P', '/', '1', '.', '1', ' ', '4'});
    devices.breakOff();
    devices.beLate();
    devices.spoil(frame -> TcpFraming.frame(1, 5, new byte[] {4, 2, 0, 0}));
    Eventually.become("some rejected", () -> link.counts().rejected() > 0);
    reads(heardA, 5.5);
    reads(heardB, 6.5);
    devices.spoil(
        frame -> {
          network.hangUp();
          return frame;
        });
    reads(heardA, 5.5);
    reads(heardB, 6.5);
  }

  @Test
  void aConnectionToADeviceThatHasForgottenItIsMadeAnew() throws Exception {
    DevicesOnNetwork network = new DevicesOnNetwork(devices, 0);
    open.add(network.answering());
    started(tcp(network.port()), 5, 100, heardA);
    reads(heardA, 5.5);
    devices.beSilent();
    devices.beSilent();
    heardA.nextTrouble("no-answer");
    reads(heardA, 5.5);
    assertThat(network.connections()).isEqualTo(2);
    assertThat(heardA.troubles()).isEmpty();
  }
}
