package org.restpoint.adapters.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.checksum.Crc16;
import org.restpoint.adapters.line.DecimalMark;
import org.restpoint.adapters.line.LineChecksum;
import org.restpoint.adapters.line.LineEncoding;
import org.restpoint.adapters.line.LineEnd;
import org.restpoint.adapters.line.LineFormat;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.quantity.Meanings;

/** What a meter should never send. Each is counted and told, and the next good line is read. */
@EnabledOnOs(OS.LINUX)
@Timeout(120)
class SerialViolenceTest {

  private static final int MEGABYTE = 1 << 20;

  @TempDir private Path folder;
  private final PseudoTerminal meter = new PseudoTerminal();
  private final CollectingListener listener = new CollectingListener();
  private final AtomicLong nanos = new AtomicLong();
  private Optional<SerialLink> opened = Optional.empty();

  private SerialLink reading(LineFormat format) throws InterruptedException {
    SerialLink link =
        new SerialLine(
                new SerialLineSettings(PortSettings.plain(meter.path().toString(), 9600), format),
                folder.resolve("native"),
                () -> Instant.EPOCH,
                nanos::get)
            .link(
                new SerialSettings(
                    Pattern.compile("E=(?<millivolts>.+)"),
                    Meanings.MILLIVOLTS,
                    DecimalMark.POINT,
                    Optional.empty(),
                    Optional.empty(),
                    Duration.ofSeconds(1),
                    Duration.ofMinutes(5)),
                listener);
    opened = Optional.of(link);
    link.start();
    Eventually.become("it reads", () -> link.check().condition() == Condition.READING);
    return link;
  }

  /** A reading is counted just after it is handed over. */
  private static void counted(SerialLink link, LinkCounts counts) throws InterruptedException {
    Eventually.become(counts, () -> link.counts().equals(counts));
  }

  @AfterEach
  void close() {
    opened.ifPresent(SerialLink::close);
    meter.close();
  }

  @Test
  void aLineOfAMegabyteIsOneThatIsTooLong() throws Exception {
    SerialLink link = reading(LineFormat.PLAIN);
    meter.send("x".repeat(MEGABYTE) + "\nE=7\n");
    assertThat(listener.nextReading().millivolts()).hasValue(7);
    counted(link, new LinkCounts(2, 1, 1, 0));
    assertThat(listener.nextTrouble().code()).isEqualTo("line-too-long");
    assertThat(listener.troubles()).isEmpty();
  }

  @Test
  void noiseIsToldOnceAndCounted() throws Exception {
    SerialLink link = reading(LineFormat.PLAIN);
    byte[] noise = new byte[100_000];
    new Random(20261125).nextBytes(noise);
    meter.send(new String(noise, StandardCharsets.ISO_8859_1) + "\nE=7\n");
    assertThat(listener.nextReading().millivolts()).hasValue(7);
    assertThat(listener.nextTrouble().code()).isEqualTo("line-rejected");
    Eventually.become("it is counted", () -> link.counts().accepted() == 1);
    assertThat(link.counts().rejected()).isGreaterThan(100);
    long rejected = link.counts().rejected();
    nanos.addAndGet(Duration.ofMinutes(1).toNanos());
    assertThat(listener.nextTrouble("line-rejected").text())
        .contains("sent %d more lines".formatted(rejected - 1));
  }

  @Test
  void aFloodIsDroppedWhereItIsNotTakenAndNothingIsLostOnTheWay() throws Exception {
    int lines = 50_000;
    SerialLink link = reading(LineFormat.PLAIN);
    listener.full(true);
    AtomicBoolean sent = new AtomicBoolean();
    Thread flood =
        new Thread(
            () -> {
              for (int i = 0; i < lines; i++) {
                meter.send("E=1.25\n");
              }
              sent.set(true);
            },
            "flood");
    flood.start();
    Eventually.become("all came", () -> sent.get() && link.counts().received() == lines);
    flood.join();
    counted(link, new LinkCounts(lines, 0, 0, lines));
    assertThat(listener.nextTrouble().code()).isEqualTo("hand-over-full");
    assertThat(listener.troubles()).isEmpty();
    listener.full(false);
    meter.send("E=7\n");
    assertThat(listener.nextReading().millivolts()).hasValue(7);
  }

  @Test
  void aWrongChecksumIsToldAsSuchAndCounted() throws Exception {
    LineChecksum crc = new LineChecksum.Crc(Crc16.MODBUS);
    SerialLink link = reading(new LineFormat(LineEnd.CR_OR_LF, LineEncoding.LATIN_1, crc));
    String right = "E=7*%04X".formatted(Crc16.MODBUS.of(LineEncoding.LATIN_1.bytes("E=7")));
    meter.send("E=1*0000\nE=2\n" + right + "\n");
    assertThat(listener.nextReading().millivolts()).hasValue(7);
    counted(link, new LinkCounts(3, 1, 2, 0));
    String port = "serial port " + meter.path();
    LinkTrouble first = listener.nextTrouble();
    assertThat(first.code()).isEqualTo("checksum-wrong");
    assertThat(first.text())
        .isEqualTo(
            "%s sent a line whose checksum is wrong: \"E=1*0000\" (it ends in 0000, and its characters give %04X)",
            port, Crc16.MODBUS.of(LineEncoding.LATIN_1.bytes("E=1")));
    meter.send("E=3*\n" + right + "\n");
    listener.nextReading();
    nanos.addAndGet(Duration.ofMinutes(1).toNanos());
    assertThat(listener.nextTrouble("checksum-wrong").text())
        .isEqualTo(
            "%s sent 2 more lines whose checksum is wrong, the latest: \"E=3*\" (it does not end in a separator and four hexadecimal digits)",
            port);
  }

  @Test
  void halfARecordOfFixedLengthIsGivenUpAtAPause() throws Exception {
    SerialLink link =
        reading(new LineFormat(new LineEnd.Width(6), LineEncoding.LATIN_1, LineChecksum.NONE));
    meter.send("E=  12E=  1");
    assertThat(listener.nextReading().millivolts()).hasValue(12);
    assertThat(listener.nextTrouble().text())
        .endsWith("\"E=  1\" (a pause came after 5 of its 6 bytes)");
    meter.send("E=- 13");
    assertThat(listener.nextReading().millivolts()).hasValue(-13);
    counted(link, new LinkCounts(3, 2, 1, 0));
  }

  @Test
  void aMarkOfItsOwnThatNeverComesIsNamed() throws Exception {
    reading(new LineFormat(new LineEnd.Mark("\u0003"), LineEncoding.LATIN_1, LineChecksum.NONE));
    meter.send("E=1\r\n".repeat(300));
    assertThat(listener.nextTrouble().remedy())
        .isEqualTo(
            "Check the speed (here: 9600 baud) and that the meter ends its lines with \"\\x03\"");
    meter.send("\u0003E=7\u0003");
    assertThat(listener.nextReading().millivolts()).hasValue(7);
  }
}
