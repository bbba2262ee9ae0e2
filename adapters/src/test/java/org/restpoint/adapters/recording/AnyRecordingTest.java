package org.restpoint.adapters.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Tables in any layout, whole and in any pieces; and files that are no tables. */
class AnyRecordingTest {

  private static final Instant T = Instant.parse("2026-10-24T22:00:00Z");

  private final Random random = new Random(20_261_024);
  private final Path file;

  AnyRecordingTest(@TempDir Path folder) {
    this.file = folder.resolve("made-up.csv");
  }

  @Test
  void aTableInAnyLayoutReadsBackTheSame() throws IOException {
    for (int i = 0; i < 300; i++) {
      MadeTable table = new MadeTable(random);
      Files.write(file, table.bytes());
      List<SkippedLine> skipped = new ArrayList<>();
      List<ProbeReading> rows = new ArrayList<>();
      try (RecordingReader reader = RecordingReader.open(file, table.layout(), skipped::add)) {
        reader.forEachRemaining(rows::add);
        assertThat(reader.counts().rejected()).as("%s", table).isEqualTo(table.gaps());
        assertThat(reader.counts().accepted()).isEqualTo(rows.size());
      }
      assertThat(rows).as("%s", table).isEqualTo(table.rows());
      assertThat(skipped.stream().filter(line -> line.skip() == Skip.HEADER_AGAIN))
          .hasSize(table.repetitions());

      List<ProbeReading> pieces = new ArrayList<>();
      FollowedRows followed = new FollowedRows(table.layout(), null, false, new Heard(pieces));
      inPieces(table.bytes(), followed);
      assertThat(pieces).as("%s", table).isEqualTo(table.rows());
    }
  }

  @Test
  @Timeout(120)
  void anyBytesGiveReadingsOrSkippedLinesAndNoHarm() throws IOException {
    for (int i = 0; i < 600; i++) {
      MadeTable table = new MadeTable(random);
      byte[] bytes = table.bytes();
      for (int change = random.nextInt(1 + bytes.length / 4); change > 0; change--) {
        bytes[random.nextInt(bytes.length)] = garbage();
      }
      Files.write(file, bytes);
      long[] rejected = {0};
      try (RecordingReader reader =
          RecordingReader.open(
              file, table.layout(), line -> rejected[0] += line.skip().isRejected() ? 1 : 0)) {
        long accepted = 0;
        while (reader.hasNext()) {
          reader.next();
          accepted++;
        }
        assertThat(reader.counts()).isEqualTo(new RecordingCounts(accepted, rejected[0]));
      } catch (RecordingException e) {
        assertThat(e).hasMessageContaining(file.toString());
      }
      inPieces(
          bytes,
          new FollowedRows(
              table.layout(),
              new NearClock(() -> T, Duration.ofDays(1)),
              random.nextBoolean(),
              new Heard(new ArrayList<>())));
    }
  }

  private byte garbage() {
    String likely = "\n\r\"\",;\t#.-+0129eE:TZ \0";
    return random.nextInt(4) == 0
        ? (byte) random.nextInt()
        : (byte) likely.charAt(random.nextInt(likely.length()));
  }

  private void inPieces(byte[] bytes, FollowedRows followed) {
    int at = 0;
    while (at < bytes.length) {
      int piece = Math.min(bytes.length - at, 1 + random.nextInt(random.nextBoolean() ? 3 : 500));
      followed.accept(ByteBuffer.wrap(bytes, at, piece));
      at += piece;
    }
  }

  /** Keeps readings. */
  private record Heard(List<ProbeReading> readings) implements FollowedRows.Taker {

    @Override
    public void reading(ProbeReading row) {
      readings.add(row);
    }

    @Override
    public void skipped(SkippedLine line) {
      assertThat(line.reason()).isNotEmpty();
    }
  }
}
