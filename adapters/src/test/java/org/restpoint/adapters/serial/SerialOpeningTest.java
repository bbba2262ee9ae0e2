package org.restpoint.adapters.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.line.DecimalMark;
import org.restpoint.adapters.line.LineFormat;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.quantity.Meanings;

/** What a link says of a port that it cannot open, and of one that it loses. */
@EnabledOnOs(OS.LINUX)
@Timeout(120)
class SerialOpeningTest {

  @TempDir private Path folder;
  private final CollectingListener listener = new CollectingListener();
  private PseudoTerminal meter = new PseudoTerminal();

  private SerialLink link(Path port, CollectingListener listener) {
    return new SerialLine(
            new SerialLineSettings(PortSettings.plain(port.toString(), 9600), LineFormat.PLAIN),
            folder.resolve("native"),
            InstantSource.system(),
            System::nanoTime)
        .link(
            new SerialSettings(
                Pattern.compile("(?<millivolts>.*)"),
                Meanings.MILLIVOLTS,
                DecimalMark.POINT,
                Optional.empty(),
                Optional.empty(),
                Duration.ofSeconds(1),
                Duration.ofMinutes(5)),
            listener);
  }

  @AfterEach
  void unplug() {
    meter.close();
  }

  @Test
  void anAbsentPortIsToldOnceAndSoIsThatItIsThere() throws Exception {
    Path port = folder.resolve("meter");
    try (SerialLink link = link(port, listener)) {
      link.start();
      LinkTrouble expected =
          new LinkTrouble(
              "port-absent",
              "serial port %s is absent".formatted(port),
              "Plug the meter in, or look which ports there are with: restpoint ports");
      assertThat(listener.nextTrouble()).isEqualTo(expected);
      assertThat(link.check().condition()).isEqualTo(Condition.LOST);
      assertThat(link.check().detail()).isEqualTo(expected.text() + ". " + expected.remedy());
      meter.linkedAs(port);
      assertThat(listener.nextTrouble())
          .isEqualTo(
              new LinkTrouble("port-back", "serial port %s is there and open".formatted(port), ""));
    }
  }

  /** jSerialComm would look for a device of that name under /dev, and open that one. */
  @Test
  void anAbsentPortIsNotTakenForAnotherOfItsName() {
    Path port = folder.resolve("ptmx");
    try (SerialLink link = link(port, listener)) {
      link.start();
      assertThat(listener.nextTrouble().code()).isEqualTo("port-absent");
    }
  }

  @Test
  void aLostPortIsToldAndReadAgainWhenItIsBackAsAnotherDevice() throws Exception {
    Path port = meter.linkedAs(folder.resolve("meter"));
    try (SerialLink link = link(port, listener)) {
      link.start();
      reading(link);
      meter.send("1\r\n2");
      assertThat(listener.nextReading().millivolts()).hasValue(1);
      meter.close();
      assertThat(listener.nextTrouble().text())
          .isEqualTo(
              "serial port %s sent a line that is not a reading: \"2\" (it was cut off)", port);
      assertThat(link.counts()).isEqualTo(new LinkCounts(2, 1, 1, 0));
      assertThat(listener.nextTrouble())
          .isEqualTo(
              new LinkTrouble(
                  "port-lost",
                  "serial port %s was lost while it was read".formatted(port),
                  "Plug the meter in again; reading goes on by itself"));
      assertThat(link.check().condition()).isEqualTo(Condition.LOST);
      meter = new PseudoTerminal();
      meter.linkedAs(port);
      assertThat(listener.nextTrouble().code()).isEqualTo("port-back");
      reading(link);
      meter.send("3\r\n");
      assertThat(listener.nextReading().millivolts()).hasValue(3);
    }
  }

  @Test
  void aPortThatAnotherProgramHoldsIsBusyUntilItLetsGo() throws Exception {
    Process holder = new ProcessBuilder("flock", meter.path().toString(), "cat").start();
    try (SerialLink link = link(meter.path(), listener);
        BufferedReader echo = holder.inputReader(StandardCharsets.US_ASCII)) {
      holder.getOutputStream().write("held\n".getBytes(StandardCharsets.US_ASCII));
      holder.getOutputStream().flush();
      assertThat(echo.readLine()).isEqualTo("held");

      link.start();
      assertThat(listener.nextTrouble())
          .isEqualTo(
              new LinkTrouble(
                  "port-busy",
                  "serial port %s is busy: another program holds it".formatted(meter.path()),
                  "Close the other program; which one it is tells: fuser -v " + meter.path()));
      holder.getOutputStream().close();
      assertThat(listener.nextTrouble().code()).isEqualTo("port-back");
    } finally {
      holder.destroy();
    }
  }

  @Test
  void aPortThatAnotherLinkHoldsIsBusyAlsoUnderAnotherName() throws Exception {
    Path alias = meter.linkedAs(folder.resolve("meter"));
    SerialLink first = link(meter.path(), new CollectingListener());
    first.start();
    reading(first);
    try (SerialLink second = link(alias, listener)) {
      second.start();
      assertThat(listener.nextTrouble())
          .isEqualTo(
              new LinkTrouble(
                  "port-busy",
                  "serial port %s is busy: another probe of this service holds it".formatted(alias),
                  "Name the port alike for all probes on it, or give each a port of its own"));
      first.close();
      assertThat(listener.nextTrouble().code()).isEqualTo("port-back");
    }
  }

  @Test
  void aFileIsNotASerialPort() throws Exception {
    Path file = Files.createFile(folder.resolve("file"));
    try (SerialLink link = link(file, listener)) {
      link.start();
      assertThat(listener.nextTrouble())
          .isEqualTo(
              new LinkTrouble(
                  "port-unusable",
                  "%s is not a serial port".formatted(file),
                  "Look which ports there are with: restpoint ports"));
    }
  }

  private static void reading(SerialLink link) throws InterruptedException {
    Eventually.become("the link reads", () -> link.check().condition() == Condition.READING);
  }
}
