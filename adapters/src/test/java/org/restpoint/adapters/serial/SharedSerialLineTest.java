package org.restpoint.adapters.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
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
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.quantity.Meanings;

/** Several probes on one port: whose line is whose, and what is told once. */
@EnabledOnOs(OS.LINUX)
@Timeout(120)
class SharedSerialLineTest {

  private static final String CHANNELS = "CH(?<channel>\\d+) (?<millivolts>\\S+)";
  private static final Duration POLL_EVERY = Duration.ofSeconds(4);
  private static final Duration NO_DATA_AFTER = Duration.ofSeconds(30);

  @TempDir private Path folder;
  private final PseudoTerminal meter = new PseudoTerminal();
  private final CollectingListener listenerA = new CollectingListener();
  private final CollectingListener listenerB = new CollectingListener();
  private final AtomicLong nanos = new AtomicLong();
  private String port = "";
  private Optional<SerialLine> line = Optional.empty();
  private Optional<SerialLink> linkA = Optional.empty();
  private Optional<SerialLink> linkB = Optional.empty();

  @BeforeEach
  void makeTheLine() {
    port = meter.path().toString();
    line =
        Optional.of(
            new SerialLine(
                new SerialLineSettings(PortSettings.plain(port, 9600), LineFormat.PLAIN),
                folder.resolve("native"),
                () -> Instant.EPOCH,
                nanos::get));
  }

  @AfterEach
  void close() {
    linkA.ifPresent(SerialLink::close);
    linkB.ifPresent(SerialLink::close);
    meter.close();
  }

  private SerialLink link(
      CollectingListener listener,
      String pattern,
      Optional<String> channel,
      Optional<String> poll) {
    return line.orElseThrow()
        .link(
            new SerialSettings(
                Pattern.compile(pattern),
                Meanings.of(pattern),
                DecimalMark.POINT,
                channel,
                poll,
                POLL_EVERY,
                NO_DATA_AFTER),
            listener);
  }

  private void start(SerialLink a, SerialLink b) throws InterruptedException {
    linkA = Optional.of(a);
    linkB = Optional.of(b);
    a.start();
    b.start();
    reads(a);
    reads(b);
  }

  private void startChannels() throws InterruptedException {
    start(
        link(listenerA, CHANNELS, Optional.of("1"), Optional.empty()),
        link(listenerB, CHANNELS, Optional.of("2"), Optional.empty()));
  }

  private static void reads(SerialLink link) throws InterruptedException {
    Eventually.become("it reads", () -> link.check().condition() == Condition.READING);
  }

  /** A reading is counted just after it is handed over, and one link after the other. */
  private static void counted(Optional<SerialLink> link, LinkCounts counts)
      throws InterruptedException {
    Eventually.become(counts, () -> link.orElseThrow().counts().equals(counts));
  }

  private void pass(Duration span) {
    nanos.addAndGet(span.toNanos());
  }

  @Test
  void eachReadsTheLinesOfItsChannelAlone() throws Exception {
    startChannels();
    meter.send("CH1 10\nCH2 20\nCH2 over\nCH1 11\nCH2 21\n");

    assertThat(listenerA.nextReadings(2))
        .extracting(reading -> reading.millivolts().getAsDouble())
        .containsExactly(10.0, 11.0);
    assertThat(listenerB.nextReadings(2))
        .extracting(reading -> reading.millivolts().getAsDouble())
        .containsExactly(20.0, 21.0);
    counted(linkA, new LinkCounts(2, 2, 0, 0));
    counted(linkB, new LinkCounts(3, 2, 1, 0));
    assertThat(listenerB.nextTrouble().text()).contains("CH2 over");
    assertThat(listenerA.troubles()).isEmpty();
  }

  @Test
  void aLineThatNoneReadsIsCountedForEachAndToldOnce() throws Exception {
    startChannels();
    meter.send("?\nCH1 10\nCH2 20\n");
    listenerB.nextReading();

    counted(linkA, new LinkCounts(2, 1, 1, 0));
    counted(linkB, new LinkCounts(2, 1, 1, 0));
    assertThat(listenerA.nextTrouble().code()).isEqualTo("line-rejected");
    assertThat(listenerA.troubles()).isEmpty();
    assertThat(listenerB.troubles()).isEmpty();
  }

  @Test
  void aChannelThatNoneHasIsCountedAndToldOnceForTheChannel() throws Exception {
    startChannels();
    meter.send("CH3 30\nCH3 31\nCH4 40\nCH2 20\n");
    listenerB.nextReading();

    counted(linkA, new LinkCounts(3, 0, 3, 0));
    counted(linkB, new LinkCounts(4, 1, 3, 0));
    assertThat(listenerA.nextTrouble())
        .isEqualTo(
            new LinkTrouble(
                "channel-unclaimed",
                "serial port %s sends lines of channel \"3\", which no probe of the station has"
                    .formatted(port),
                "Give a probe this channel, or leave it: its lines are counted as rejected and not told again"));
    assertThat(listenerA.nextTrouble().text()).contains("channel \"4\"");
    assertThat(listenerA.troubles()).isEmpty();
    assertThat(listenerB.troubles()).isEmpty();
  }

  @Test
  void eachPicksItsOwnNumberOutOfOneLine() throws Exception {
    start(
        link(listenerA, "(?<millivolts>.+);.*;.*", Optional.empty(), Optional.empty()),
        link(listenerB, ".*;.*;(?<celsius>.+)", Optional.empty(), Optional.empty()));
    meter.send("10.5;99;21.5\n11.5\n");

    assertThat(listenerA.nextReading().millivolts()).hasValue(10.5);
    assertThat(listenerB.nextReading().celsius()).hasValue(21.5);
    assertThat(listenerA.nextTrouble().code()).isEqualTo("line-rejected");
    counted(linkA, new LinkCounts(2, 1, 1, 0));
    counted(linkB, new LinkCounts(2, 1, 1, 0));
  }

  @Test
  void severalAsksGoOutInTurnAndOneThatSeveralShareOnce() throws Exception {
    start(
        link(listenerA, CHANNELS, Optional.of("1"), Optional.of("A\r")),
        link(listenerB, CHANNELS, Optional.of("2"), Optional.of("B\r")));
    SerialLink third = link(listenerB, CHANNELS, Optional.of("3"), Optional.of("A\r"));
    third.start();
    reads(third);
    assertThat(meter.receive(30_000)).isEqualTo("A\r");
    pass(POLL_EVERY);
    assertThat(meter.receive(30_000)).isEqualTo("B\r");
    pass(POLL_EVERY.dividedBy(2));
    assertThat(meter.receive(30_000)).isEqualTo("A\r");
    meter.send("CH1 10\n");
    assertThat(listenerA.nextReading().millivolts()).hasValue(10);
    third.close();
  }

  @Test
  void aChannelThatFallsSilentIsToldWhileTheOtherSpeaks() throws Exception {
    startChannels();
    for (int second = 0; second < NO_DATA_AFTER.toSeconds(); second++) {
      pass(Duration.ofSeconds(1));
      meter.send("CH1 10\n");
      listenerA.nextReading();
    }
    assertThat(listenerB.nextTrouble())
        .isEqualTo(
            new LinkTrouble(
                "no-data",
                "serial port %s sends lines, but has sent none of channel \"2\" for 30 s"
                    .formatted(port),
                "Check that the meter measures there, and the keys channel, line and poll of this probe"));
    assertThat(linkB.orElseThrow().check().condition()).isEqualTo(Condition.SILENT);
    assertThat(linkA.orElseThrow().check().condition()).isEqualTo(Condition.READING);
    meter.send("CH2 20\n");
    listenerB.nextReading();
    assertThat(listenerB.nextTrouble().code()).isEqualTo("data-back");
    assertThat(listenerA.troubles()).isEmpty();
  }

  @Test
  void aPortThatFallsSilentIsToldOnceAndSoIsItsEnd() throws Exception {
    startChannels();
    meter.send("CH1 10\nCH2 20\n");
    listenerB.nextReading();
    pass(NO_DATA_AFTER);
    assertThat(listenerA.nextTrouble().text()).endsWith("has sent nothing for 30 s");
    Eventually.become(
        "B shows it", () -> linkB.orElseThrow().check().condition() == Condition.SILENT);
    meter.send("CH2 21\n");
    listenerB.nextReading();
    assertThat(listenerA.nextTrouble().code()).isEqualTo("data-back");
    assertThat(linkA.orElseThrow().check().condition()).isEqualTo(Condition.READING);
    assertThat(listenerB.troubles()).isEmpty();
  }

  @Test
  void aLostPortIsToldOnceAndEachShowsIt() throws Exception {
    startChannels();
    meter.close();
    assertThat(listenerA.nextTrouble().code()).isEqualTo("port-lost");
    Eventually.become(
        "B shows it", () -> linkB.orElseThrow().check().condition() == Condition.LOST);
    assertThat(listenerB.troubles()).isEmpty();
  }

  @Test
  void oneMayEndAndTheOtherGoesOn() throws Exception {
    startChannels();
    linkA.orElseThrow().close();
    meter.send("CH1 10\nCH2 20\n");
    assertThat(listenerB.nextReading().millivolts()).hasValue(20);
    counted(linkA, new LinkCounts(0, 0, 0, 0));
    linkB.orElseThrow().close();
    assertThat(Thread.getAllStackTraces().keySet())
        .extracting(Thread::getName)
        .doesNotContain("serial port " + port);

    SerialLink again = link(listenerA, CHANNELS, Optional.of("1"), Optional.empty());
    again.start();
    reads(again);
    meter.send("CH1 11\n");
    assertThat(listenerA.nextReading().millivolts()).hasValue(11);
    again.close();
  }
}
