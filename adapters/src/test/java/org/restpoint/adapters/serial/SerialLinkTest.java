package org.restpoint.adapters.serial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
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
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.quantity.Meanings;
import org.restpoint.stability.reading.Reading;

/** What a link does with an open port: lines, silences, polls. */
@EnabledOnOs(OS.LINUX)
@Timeout(120)
class SerialLinkTest {

  private static final Instant NOW = Instant.parse("2026-04-02T14:03:00.123456789Z");
  private static final Instant NOW_IN_MILLIS = Instant.parse("2026-04-02T14:03:00.123Z");
  private static final Duration POLL_EVERY = Duration.ofSeconds(5);
  private static final Duration NO_DATA_AFTER = Duration.ofSeconds(30);
  private static final String LINE = "E=(?<millivolts>[-+.\\d]+) mV(?: T=(?<celsius>[-+.\\d]+) C)?";

  @TempDir private Path folder;
  private final PseudoTerminal meter = new PseudoTerminal();
  private final CollectingListener listener = new CollectingListener();

  /** Close to its turn, as a monotonic clock may be. */
  private final AtomicLong nanos = new AtomicLong(Long.MAX_VALUE - 1);

  private String port = "";
  private SerialLink link = link(LINE, Optional.empty());

  @BeforeEach
  void makeTheLink() throws Exception {
    port = meter.linkedAs(folder.resolve("meter")).toString();
    link = link(LINE, Optional.empty());
  }

  private SerialLink link(String line, Optional<String> poll) {
    return new SerialLine(
            new SerialLineSettings(
                PortSettings.plain(port.isEmpty() ? "none" : port, 9600), LineFormat.PLAIN),
            Path.of(port).resolveSibling("native"),
            () -> NOW,
            nanos::get)
        .link(
            new SerialSettings(
                Pattern.compile(line),
                Meanings.of(line),
                DecimalMark.POINT,
                Optional.empty(),
                poll,
                POLL_EVERY,
                NO_DATA_AFTER),
            listener);
  }

  @AfterEach
  void close() {
    link.close();
    meter.close();
  }

  private void read() throws Exception {
    link.start();
    Eventually.become(
        "the link reads", () -> link.check().condition() == LinkHealth.Condition.READING);
  }

  private void pass(Duration span) {
    nanos.addAndGet(span.toNanos());
  }

  @Test
  void aReadingCarriesTheTimeAtWhichItsLineEnded() throws Exception {
    read();
    meter.send("E=-12.5 mV T=25.1 C\r\nE=7");
    assertThat(listener.nextReading()).isEqualTo(Reading.of(NOW_IN_MILLIS, -12.5, 25.1));
    assertThat(link.check()).isEqualTo(new LinkHealth(Condition.READING, "", Optional.of(NOW)));
    meter.send(" mV\r\n");
    assertThat(listener.nextReading()).isEqualTo(Reading.ofMillivolts(NOW_IN_MILLIS, 7));
  }

  @Test
  void aThermometersReadingsHaveATemperatureAlone() throws Exception {
    link = link("T=(?<celsius>[-+.\\d]+) C", Optional.empty());
    read();
    meter.send("T=-1.25 C\r\n");
    assertThat(listener.nextReading())
        .isEqualTo(new Reading(NOW_IN_MILLIS, OptionalDouble.empty(), OptionalDouble.of(-1.25)));
  }

  @Test
  void aLineWhoseBeginningWasNotSeenIsNotRead() throws Exception {
    for (int opening = 0; opening < 20; opening++) {
      try (PseudoTerminal busyMeter = new PseudoTerminal()) {
        port = busyMeter.path().toString();
        SerialLink joining = link("(?<millivolts>[-.\\d]+)", Optional.empty());
        Chatter chatter = new Chatter(busyMeter);
        joining.start();
        for (int i = 0; i < 10; i++) {
          assertThat(listener.nextReading().millivolts()).hasValue(-1234.5);
        }
        chatter.end();
        joining.close();
        assertThat(joining.counts().rejected()).isZero();
        listener.readings().clear();
      }
    }
  }

  /** A meter that never pauses, its lines cut into pieces that end anywhere. */
  private static final class Chatter {
    private final AtomicBoolean over = new AtomicBoolean();
    private final Thread thread;

    Chatter(PseudoTerminal meter) {
      thread =
          new Thread(
              () -> {
                String lines = "-1234.5\r\n".repeat(7);
                for (int at = 0; !over.get(); at = (at + 7) % lines.length()) {
                  meter.send(lines.substring(at, at + 7));
                }
              });
      thread.start();
    }

    void end() throws InterruptedException {
      over.set(true);
      thread.join();
    }
  }

  @Test
  void silenceIsToldOnceAndSoIsItsEnd() throws Exception {
    read();
    pass(NO_DATA_AFTER);
    LinkTrouble expected =
        new LinkTrouble(
            "no-data",
            "serial port %s has sent nothing for 30 s".formatted(port),
            "Check that the meter is on and set to send, the cable, and the speed (here: 9600 baud)");
    assertThat(listener.nextTrouble()).isEqualTo(expected);
    assertThat(link.check())
        .isEqualTo(
            new LinkHealth(
                Condition.SILENT, expected.text() + ". " + expected.remedy(), Optional.empty()));

    pass(NO_DATA_AFTER);
    meter.send("E=1 mV\n");
    assertThat(listener.nextTrouble())
        .isEqualTo(new LinkTrouble("data-back", "serial port %s sends again".formatted(port), ""));
    assertThat(listener.nextReading().millivolts()).hasValue(1);
    assertThat(link.check().condition()).isEqualTo(Condition.READING);

    pass(NO_DATA_AFTER);
    assertThat(listener.nextTrouble()).isEqualTo(expected);
  }

  @Test
  void bytesThatNeverEndALineAreToldAndThenSilenceOfLines() throws Exception {
    read();
    meter.send("x".repeat(2_000));
    assertThat(listener.nextTrouble())
        .isEqualTo(
            new LinkTrouble(
                "line-too-long",
                "serial port %s sent a line longer than 1024 bytes".formatted(port),
                "Check the speed (here: 9600 baud) and that the meter ends its lines with CR or LF"));
    pass(NO_DATA_AFTER);
    assertThat(listener.nextTrouble())
        .isEqualTo(
            new LinkTrouble(
                "no-data",
                "serial port %s has sent bytes but no end of a line for 30 s".formatted(port),
                "Check the speed (here: 9600 baud) and that the meter ends its lines with CR or LF"));
    assertThat(link.counts()).isEqualTo(new LinkCounts(1, 0, 1, 0));
  }

  @Test
  void rejectedLinesAreToldWithASampleAndThenOnceAMinuteWithACount() throws Exception {
    read();
    meter.send("Err\u001B1\n");
    String remedy =
        "Compare it with the key line of the station file;"
            + " odd characters mean a wrong speed (here: 9600 baud)";
    assertThat(listener.nextTrouble())
        .isEqualTo(
            new LinkTrouble(
                "line-rejected",
                "serial port %s sent a line that is not a reading: \"Err\\x1B1\" (it does not match the pattern)"
                    .formatted(port),
                remedy));
    meter.send("Err 2\nErr 3\nE=20000 mV\nE=1 mV\n");
    listener.nextReading();
    assertThat(listener.troubles()).isEmpty();
    pass(Duration.ofMinutes(1));
    assertThat(listener.nextTrouble("line-rejected"))
        .isEqualTo(
            new LinkTrouble(
                "line-rejected",
                "serial port %s sent 3 more lines that are not a reading, the latest: \"E=20000 mV\" (20000 mV is outside -10000 to 10000 mV)"
                    .formatted(port),
                remedy));
    assertThat(link.counts()).isEqualTo(new LinkCounts(5, 1, 4, 0));
  }

  @Test
  void readingsThatFindTheHandOverFullAreToldTheSameWay() throws Exception {
    read();
    listener.full(true);
    meter.send("E=1 mV\nE=2 mV\nE=3 mV\n?\n");
    assertThat(listener.nextTrouble())
        .isEqualTo(
            new LinkTrouble(
                "hand-over-full",
                "a reading of serial port %s was dropped: the hand-over is full".formatted(port),
                "Look in the log for what holds the service up, or let the device send less often"));
    assertThat(listener.nextTrouble().code()).isEqualTo("line-rejected");
    pass(Duration.ofMinutes(1));
    assertThat(listener.nextTrouble("hand-over-full").text())
        .isEqualTo("2 more readings of serial port %s were dropped: the hand-over is full", port);
    assertThat(link.counts()).isEqualTo(new LinkCounts(4, 0, 1, 3));
  }

  @Test
  void aMeterIsAskedAtOnceAndThenAtTheInterval() throws Exception {
    link = link(LINE, Optional.of("R\r"));
    read();
    assertThat(meter.receive(30_000)).isEqualTo("R\r");
    pass(POLL_EVERY);
    assertThat(meter.receive(30_000)).isEqualTo("R\r");
    pass(POLL_EVERY.multipliedBy(3));
    assertThat(meter.receive(30_000)).isEqualTo("R\r");
    pass(POLL_EVERY.minusNanos(1));
    meter.send("E=1 mV\n");
    listener.nextReading();
    pass(Duration.ofNanos(1));
    assertThat(meter.receive(30_000)).isEqualTo("R\r");
    pass(NO_DATA_AFTER);
    assertThat(listener.nextTrouble().remedy())
        .isEqualTo(
            "Check that the meter is on, the cable, the speed (here: 9600 baud) and the poll (here: \"R\\x0D\")");
  }

  @Test
  void closingDoesNotWaitForAMeterThatTakesNothing() throws Exception {
    link = link(LINE, Optional.of("R".repeat(1_000_000)));
    link.start();
    assertThat(meter.receive(30_000)).isNotEmpty();
    link.close();
    assertThat(link.check().condition()).isEqualTo(Condition.CLOSED);
    assertThat(Thread.getAllStackTraces().keySet())
        .extracting(Thread::getName)
        .doesNotContain("serial port " + port);
  }

  @Test
  void aLinkIsStartedOnce() throws Exception {
    read();
    assertThatIllegalStateException().isThrownBy(link::start);
    link.close();
    assertThatIllegalStateException().isThrownBy(link::start);
  }
}
