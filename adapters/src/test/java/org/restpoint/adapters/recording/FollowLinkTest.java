package org.restpoint.adapters.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.stability.reading.Reading;

class FollowLinkTest extends FollowBench {

  FollowLinkTest(@TempDir Path folder) {
    super(folder);
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
  void aFileThatIsWrittenAnewIsReadFromItsBeginningButNoRowTwice() throws Exception {
    write("time,probe,millivolts,celsius\n2026-10-25T00:30:00Z,a,1,\n");
    follow(FollowBench::fromStart);
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
    follow(FollowBench::fromStart);
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
    follow(FollowBench::fromStart);
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
    follow(FollowBench::fromStart);
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
    follow(FollowBench::fromStart);
    Eventually.become("all counted", () -> link.counts().rejected() == 1_000);
    assertThat(heard.nextTrouble().text()).startsWith(file + " line 2: the time \"?\" is neither");
    settled();
    nanos.set(Duration.ofMinutes(1).toNanos());
    assertThat(heard.nextTrouble().text())
        .startsWith("999 more rows of %s were rejected, the latest line 1001:".formatted(file));
  }
}
