package org.restpoint.adapters.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.quantity.Meanings;
import org.restpoint.adapters.recording.TextForm.DecimalMark;
import org.restpoint.adapters.recording.TextForm.Delimiter;
import org.restpoint.stability.reading.Reading;

class FollowLinkTest {

  private static final Instant NOW = Instant.parse("2026-10-25T00:30:00Z");

  private static final FollowSettings NATIVE =
      new FollowSettings(
          Path.of("made-up.csv"),
          "a",
          RecordingLayout.NATIVE,
          false,
          new Stamp.Recorded(Duration.ofMinutes(5)),
          Duration.ofMinutes(10));

  private static final RecordingLayout GERMAN =
      new RecordingLayout(
          new TextForm(Delimiter.SEMICOLON, DecimalMark.COMMA, Encoding.LATIN_1, Optional.empty()),
          true,
          new RecordingColumns(
              Optional.empty(),
              Optional.of(new Column.Headed("Zeit")),
              Optional.empty(),
              Optional.of(new Column.Headed("U/mV")),
              Optional.of(new Column.Headed("T/\u00B0C"))),
          Meanings.MILLIVOLTS_AND_CELSIUS,
          new TimeForm.Iso(Optional.of(ZoneId.of("Europe/Berlin"))),
          Set.of());

  private final CollectingListener heard = new CollectingListener();
  private final AtomicLong nanos = new AtomicLong();
  private final AtomicLong asked = new AtomicLong();
  private final Path folder;
  private final Path file;
  private FollowLink link = new FollowLink(NATIVE, heard, () -> NOW, nanos::get);

  FollowLinkTest(@TempDir Path folder) {
    this.folder = folder;
    this.file = folder.resolve("made-up.csv");
  }

  @AfterEach
  void closeTheLink() {
    link.close();
  }

  @Test
  void whatStoodThereIsPassedOverAndHalfARowIsKeptUntilItsEndComes() throws Exception {
    write("time,probe,millivolts,celsius\n2026-10-25T00:29:58Z,a,1,\n2026-10-25T00:29:59Z,a,2");
    follow(settings -> settings);
    Eventually.become("reading", () -> link.check().condition() == Condition.READING);
    settled();
    append(".5,21\n2026-10-25T00:30:00Z,b,9,\n2026-10-25T00:30:0");
    assertThat(heard.nextReading()).isEqualTo(Reading.of(NOW.minusSeconds(1), 2.5, 21));
    append("1Z,a,3,\n");
    assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOW.plusSeconds(1), 3));
    assertThat(counts()).isEqualTo(new LinkCounts(2, 2, 0, 0));
    assertThat(heard.troubles()).isEmpty();
  }

  @Test
  void rowsFromTheStartCountWhereTheyAreNearTheClock() throws Exception {
    write("time,probe,millivolts,celsius\n2026-10-24T21:00:00Z,a,1,\n2026-10-25T00:26:00Z,a,2,\n");
    follow(FollowLinkTest::fromStart);
    assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOW.minusSeconds(240), 2));
    assertThat(heard.nextTrouble().sentences())
        .isEqualTo(
            file
                + " line 2: the time 2026-10-24T21:00:00Z is 12600 s behind the clock, more than"
                + " 300 s. Set the clock of what writes it, say its zone, or let time-within be"
                + " more");
    assertThat(counts()).isEqualTo(new LinkCounts(2, 1, 1, 0));
  }

  @Test
  void aTimeFarAheadDoesNotShutOutTheRowsAfterIt() throws Exception {
    write("time,probe,millivolts,celsius\n2062-10-25T00:30:00Z,a,1,\n2026-10-25T00:30:00Z,a,2,\n");
    follow(FollowLinkTest::fromStart);
    assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOW, 2));
  }

  @Test
  void aLocalTimeThatComesTwiceIsTheOneNearTheClock() throws Exception {
    write("Zeit;U/mV;T/\u00B0C\n2026-10-25 02:30:00;-12,5;21,5\n");
    follow(
        settings ->
            new FollowSettings(
                settings.file(), "a", GERMAN, true, settings.stamp(), settings.noDataAfter()));
    assertThat(heard.nextReading()).isEqualTo(Reading.of(NOW, -12.5, 21.5));
    link.close();

    follow(
        settings ->
            new FollowSettings(
                settings.file(), "a", GERMAN, true, settings.stamp(), settings.noDataAfter()),
        NOW.plusSeconds(3_600));
    assertThat(heard.nextReading()).isEqualTo(Reading.of(NOW.plusSeconds(3_600), -12.5, 21.5));
  }

  @Test
  void aFileWithoutTimesIsStampedOnArrival() throws Exception {
    RecordingLayout bare =
        new RecordingLayout(
            TextForm.NATIVE,
            false,
            new RecordingColumns(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new Column.Numbered(1)),
                Optional.empty()),
            Meanings.MILLIVOLTS,
            new TimeForm.SecondsFromZero(),
            Set.of());
    write("");
    follow(
        settings ->
            new FollowSettings(
                settings.file(), "a", bare, false, new Stamp.OnArrival(), settings.noDataAfter()));
    settled();
    append("5\r\n");
    assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOW, 5));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> new FollowSettings(file, "a", bare, false, NATIVE.stamp(), NATIVE.noDataAfter()));
  }

  @Test
  void aFileThatIsWrittenAnewIsReadFromItsBeginningButNoRowTwice() throws Exception {
    write("time,probe,millivolts,celsius\n2026-10-25T00:30:00Z,a,1,\n");
    follow(FollowLinkTest::fromStart);
    heard.nextReading();
    append("2026-10-25T00:30:0");
    settled();
    write(
        """
        time,probe,millivolts,celsius
        2026-10-25T00:29:59Z,a,0,
        2026-10-25T00:30:00Z,a,1,
        2026-10-25T00:30:01Z,a,2,
        """);
    assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOW.plusSeconds(1), 2));
    assertThat(heard.nextTrouble().sentences())
        .isEqualTo(
            "the recording %s was cut or written anew; it is read from its beginning"
                .formatted(file));
    assertThat(heard.nextTrouble().text())
        .isEqualTo(file + " line 3: the file ends in the middle of a row");
    assertThat(counts()).isEqualTo(new LinkCounts(3, 2, 1, 0));
  }

  @Test
  void anotherFileUnderTheNameIsReadFromItsBeginning() throws Exception {
    write("time,probe,millivolts,celsius\n2026-10-25T00:30:00Z,a,1,\n");
    follow(FollowLinkTest::fromStart);
    heard.nextReading();
    Path other = folder.resolve("other.csv");
    Files.writeString(other, "time,probe,millivolts,celsius\n2026-10-25T00:30:01Z,a,2,\n");
    Files.move(other, file, StandardCopyOption.REPLACE_EXISTING);
    assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOW.plusSeconds(1), 2));
    assertThat(heard.nextTrouble().sentences())
        .isEqualTo("another file stands at %s; it is read from its beginning".formatted(file));
  }

  @Test
  void aFileThatComesBackWithMoreRowsIsReadOn() throws Exception {
    write("time,probe,millivolts,celsius\n2026-10-25T00:30:00Z,a,1,\n2026-10-25T00:30:01Z,a,");
    follow(FollowLinkTest::fromStart);
    heard.nextReading();
    Files.delete(file);
    assertThat(heard.nextTrouble().sentences())
        .isEqualTo(
            "there is no recording %s. Put the recording there; it is tried again".formatted(file));
    assertThat(link.check().condition()).isEqualTo(Condition.LOST);
    write("time,probe,millivolts,celsius\n2026-10-25T00:30:00Z,a,1,\n2026-10-25T00:30:01Z,a,2,\n");
    assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOW.plusSeconds(1), 2));
    assertThat(heard.nextTrouble().sentences())
        .isEqualTo("the recording %s is there".formatted(file));
    assertThat(counts()).isEqualTo(new LinkCounts(2, 2, 0, 0));
  }

  @Test
  void aHeaderThatDoesNotFitIsToldOnceAndMendedByWritingItAnew() throws Exception {
    write("when,mV\n1,2\n");
    follow(FollowLinkTest::fromStart);
    assertThat(heard.nextTrouble().text())
        .startsWith(file + " line 1: expected the header time,probe,millivolts,celsius,");
    Eventually.become("lost", () -> link.check().condition() == Condition.LOST);
    write("time,probe,millivolts,celsius\n2026-10-25T00:30:00Z,a,1,\n");
    assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOW, 1));
    assertThat(link.check().condition()).isEqualTo(Condition.READING);
  }

  @Test
  void aFolderOrARowWithoutEndIsToldAndDoesNoHarm() throws Exception {
    Files.createDirectory(file);
    follow(settings -> settings);
    assertThat(heard.nextTrouble().text())
        .isEqualTo(file + " is not a file; name a recording, a CSV file");
    Files.delete(file);
    write("time,probe,millivolts,celsius\n" + "x".repeat(2_000_000));
    assertThat(heard.nextTrouble("line-rejected").text())
        .isEqualTo(file + " line 2: the row is longer than 65536 characters");
    append("\n2026-10-25T00:30:00Z,a,1,\n");
    assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOW, 1));
    assertThat(counts()).isEqualTo(new LinkCounts(2, 1, 1, 0));
  }

  @Test
  void silenceIsToldAndItsEnd() throws Exception {
    write("time,probe,millivolts,celsius\n");
    follow(settings -> settings);
    settled();
    nanos.set(Duration.ofMinutes(10).toNanos());
    assertThat(heard.nextTrouble().sentences())
        .isEqualTo(
            "nothing was added to the recording %s for 600 s. See whether what writes it still"
                    .formatted(file)
                + " runs, and how often it writes");
    assertThat(link.check().condition()).isEqualTo(Condition.SILENT);
    append("2026-10-25T00:30:00Z,a,1,\n");
    heard.nextReading();
    assertThat(heard.nextTrouble().text())
        .isEqualTo("the recording %s grows again".formatted(file));
    assertThat(link.check().condition()).isEqualTo(Condition.READING);
  }

  @Test
  void aFloodOfBadRowsIsCountedAndToldTogether() throws Exception {
    write("time,probe,millivolts,celsius\n" + "?,a,1,\n".repeat(1_000));
    follow(FollowLinkTest::fromStart);
    Eventually.become("all counted", () -> link.counts().rejected() == 1_000);
    assertThat(heard.nextTrouble().text()).startsWith(file + " line 2: the time \"?\" is neither");
    settled();
    nanos.set(Duration.ofMinutes(1).toNanos());
    assertThat(heard.nextTrouble().text())
        .startsWith("999 more rows of %s were rejected, the latest line 1001:".formatted(file));
  }

  private static FollowSettings fromStart(FollowSettings settings) {
    return new FollowSettings(
        settings.file(),
        settings.probe(),
        settings.layout(),
        true,
        settings.stamp(),
        settings.noDataAfter());
  }

  private void follow(UnaryOperator<FollowSettings> changed) {
    follow(changed, NOW);
  }

  private void follow(UnaryOperator<FollowSettings> changed, Instant now) {
    FollowSettings here =
        new FollowSettings(
            file,
            NATIVE.probe(),
            NATIVE.layout(),
            NATIVE.fromStart(),
            NATIVE.stamp(),
            NATIVE.noDataAfter());
    link = new FollowLink(changed.apply(here), heard, () -> now, this::tick);
    link.start();
  }

  /** What the link has counted when it has ended. */
  private LinkCounts counts() {
    link.close();
    return link.counts();
  }

  /** Waits until the link has looked several times more and found nothing. */
  private void settled() throws InterruptedException {
    long before = asked.get();
    Eventually.become("looked again", () -> asked.get() >= before + 10);
  }

  /** The link looks at this clock each time it has found nothing. */
  private long tick() {
    asked.incrementAndGet();
    return nanos.get();
  }

  private void write(String text) throws IOException {
    Files.write(file, text.getBytes(StandardCharsets.ISO_8859_1));
  }

  private void append(String text) throws IOException {
    Files.writeString(file, text, StandardOpenOption.APPEND);
  }
}
