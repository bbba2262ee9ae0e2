package org.restpoint.adapters.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.stability.reading.Reading;

class RecordingLinkTest {

  private static final Instant NOW = Instant.parse("2027-01-01T08:00:00.123456Z");
  private static final Instant STAMP = Instant.parse("2027-01-01T08:00:00.123Z");

  private final Path file;
  private final CollectingListener heard = new CollectingListener();

  RecordingLinkTest(@TempDir Path folder) {
    this.file = folder.resolve("made-up.csv");
  }

  @Test
  void aProbesRowsComeWithTheirSpacingFromNowOn() throws Exception {
    record("5.000,a,1.5,21", "5.001,b,9,", "5.020,a,2.5,", "5.040,a,3.5,22");
    try (RecordingLink link = link(heard)) {
      assertThat(link.check().condition()).isEqualTo(Condition.NEW);
      link.start();
      assertThat(heard.nextReadings(3))
          .containsExactly(
              Reading.of(STAMP, 1.5, 21),
              Reading.ofMillivolts(STAMP.plusMillis(20), 2.5),
              Reading.of(STAMP.plusMillis(40), 3.5, 22));
      assertThat(heard.nextTrouble())
          .isEqualTo(
              new LinkTrouble("recording-ended", "the recording %s has ended".formatted(file), ""));
      assertThat(link.check().condition()).isEqualTo(Condition.ENDED);
      assertThat(link.check().lastArrival()).contains(NOW);
      assertThat(link.counts()).isEqualTo(new LinkCounts(3, 3, 0, 0));
    }
  }

  @Test
  void closingDoesNotWaitForARowThatIsHoursAway() throws Exception {
    record("0,a,1,", "36000,a,2,");
    RecordingLink link = link(heard);
    link.start();
    heard.nextReading();
    link.close();
    link.close();
    assertThat(link.check().condition()).isEqualTo(Condition.CLOSED);
    assertThat(link.counts()).isEqualTo(new LinkCounts(1, 1, 0, 0));
    assertThat(heard.troubles()).isEmpty();
  }

  @Test
  void everyRowIsAccountedFor() throws Exception {
    record("0,a,1,", "0,a,2,", "0,a,3,", "0,b,3,", "?,a,4,", "0,a,5,");
    try (RecordingLink link = link(new TakesTwo(heard))) {
      link.start();
      assertThat(heard.nextTrouble())
          .isEqualTo(
              new LinkTrouble(
                  "hand-over-full",
                  "a reading of the recording %s was dropped: the hand-over is full"
                      .formatted(file),
                  "Look in the log for what holds the service up, or let the device send less"
                      + " often"));
      assertThat(heard.nextTrouble())
          .isEqualTo(
              new LinkTrouble(
                  "line-rejected",
                  file
                      + " line 6: the time \"?\" is neither ISO 8601 in UTC"
                      + " (2026-04-02T14:03:00.250Z) nor seconds (12.25)",
                  "Mend the row."));
      assertThat(heard.nextTrouble().code()).isEqualTo("recording-ended");
      assertThat(link.counts()).isEqualTo(new LinkCounts(5, 2, 1, 2));
    }
  }

  @Test
  void aFloodOfBadRowsIsCountedButNotToldOneByOne() throws Exception {
    String[] rows = new String[1_000];
    Arrays.fill(rows, "?,a,1,");
    record(rows);
    try (RecordingLink link = link(heard)) {
      link.start();
      for (int i = 0; i < 4; i++) {
        assertThat(heard.nextTrouble().remedy()).isEqualTo("Mend the row.");
      }
      assertThat(heard.nextTrouble().remedy())
          .isEqualTo("Mend the rows; further ones are only counted.");
      assertThat(heard.nextTrouble().text())
          .endsWith("1000 × a time that cannot be read (lines 2, 3, 4, 5, 6, ...)");
      assertThat(heard.nextTrouble())
          .isEqualTo(
              new LinkTrouble(
                  "recording-empty",
                  "the recording %s has no reading of a among its 1000 rows".formatted(file),
                  "See that the column probe names it."));
      assertThat(link.counts()).isEqualTo(new LinkCounts(1_000, 0, 1_000, 0));
    }
  }

  @Test
  void anAbsentRecordingDoesNotStopTheStart() throws Exception {
    RecordingLink link = link(heard);
    link.start();
    assertThat(heard.nextTrouble())
        .isEqualTo(
            new LinkTrouble(
                "recording-unreadable",
                "there is no recording " + file,
                "Put the recording there; it is tried again."));
    assertThat(link.check().condition()).isEqualTo(Condition.LOST);
    assertThat(link.check().detail()).isEqualTo("there is no recording " + file);
    link.close();
    assertThat(link.check().condition()).isEqualTo(Condition.CLOSED);
  }

  @Test
  void closingWhatWasNeverStartedIsNoTrouble() {
    RecordingLink link = link(heard);
    link.close();
    assertThat(link.check().condition()).isEqualTo(Condition.CLOSED);
  }

  private RecordingLink link(LinkListener listener) {
    return new RecordingLink(
        new RecordingSettings(file, "a"), listener, InstantSource.fixed(NOW), System::nanoTime);
  }

  private void record(String... rows) throws IOException {
    Files.writeString(file, RecordingReader.HEADER + "\n" + String.join("\n", rows) + "\n");
  }

  /** A hand-over with room for two readings. */
  private record TakesTwo(CollectingListener heard) implements LinkListener {

    @Override
    public boolean reading(Reading reading) {
      heard.full(heard.taken() == 2);
      return heard.reading(reading);
    }

    @Override
    public void trouble(LinkTrouble trouble) {
      heard.trouble(trouble);
    }
  }
}
