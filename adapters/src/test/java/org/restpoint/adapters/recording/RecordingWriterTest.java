package org.restpoint.adapters.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.stability.reading.Reading;

class RecordingWriterTest {

  private static final Instant T = Instant.parse("2026-04-02T14:03:00Z");

  @TempDir private Path folder;

  @Test
  void aRecordingIsPlainToRead() {
    StringWriter text = new StringWriter();
    try (RecordingWriter writer = RecordingWriter.to(text)) {
      writer.write("no3-a", Reading.of(T, 123.45, 21.5));
      writer.write("no3-a", Reading.ofMillivolts(T.plusMillis(1), -0.0));
    }
    assertThat(text)
        .hasToString(
            """
            time,probe,millivolts,celsius
            2026-04-02T14:03:00.000Z,no3-a,123.45,21.5
            2026-04-02T14:03:00.001Z,no3-a,-0.0,
            """);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void whatWasWrittenIsReadBackToTheLastBit(long seed) {
    Random random = new Random(seed);
    List<ProbeReading> written = new ArrayList<>();
    String[] probes = {"no3-a", "temp-1", "a,b", "say \"ah\"", "prøve 畑"};
    Instant time = Instant.ofEpochMilli(random.nextLong(-1_000_000_000_000L, 4_000_000_000_000L));
    for (int i = 0; i < 5_000; i++) {
      time = time.plusMillis(random.nextInt(5_000));
      boolean celsius = random.nextBoolean();
      written.add(
          new ProbeReading(
              probes[random.nextInt(probes.length)],
              new Reading(
                  time,
                  celsius && random.nextBoolean() ? OptionalDouble.empty() : any(random),
                  celsius
                      ? OptionalDouble.of(random.nextDouble() * 100 - 20)
                      : OptionalDouble.empty())));
    }
    Path file = folder.resolve("made-up.csv");
    try (RecordingWriter writer = RecordingWriter.create(file)) {
      written.forEach(row -> writer.write(row.probe(), row.reading()));
    }
    List<ProbeReading> read = new ArrayList<>();
    List<SkippedLine> problems = new ArrayList<>();
    try (RecordingReader reader = RecordingReader.open(file, problems::add)) {
      reader.forEachRemaining(read::add);
    }
    assertThat(problems).isEmpty();
    assertThat(read).isEqualTo(written);
  }

  @Test
  void aFileThatIsThereIsLeftAsItIs() throws IOException {
    Path file = Files.writeString(folder.resolve("made-up.csv"), "precious");
    assertThatThrownBy(() -> RecordingWriter.create(file))
        .isInstanceOf(RecordingException.class)
        .hasMessage(file + " is there already and was left as it is; name another file");
    assertThat(file).hasContent("precious");
    assertThatThrownBy(() -> RecordingWriter.create(folder.resolve("nowhere").resolve("a.csv")))
        .hasMessageStartingWith("the recording ")
        .hasMessageContaining("cannot be made");
  }

  @Test
  void whatAReaderWouldNotGiveBackIsNotWritten() {
    try (RecordingWriter writer = RecordingWriter.to(new StringWriter())) {
      writer.write("a", Reading.ofMillivolts(T, 1));
      assertThatThrownBy(() -> writer.write("a", Reading.ofMillivolts(T.minusMillis(1), 1)))
          .hasMessage("the time 2026-04-02T14:02:59.999Z goes back behind 2026-04-02T14:03:00Z");
      for (String probe : List.of("", " a", "a ", "a\nb", "a\r\nb")) {
        assertThatThrownBy(() -> writer.write(probe, Reading.ofMillivolts(T, 1)))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessageEndingWith("is not the name of a probe");
      }
    }
  }

  private static OptionalDouble any(Random random) {
    double any = Double.longBitsToDouble(random.nextLong());
    return OptionalDouble.of(
        Double.isFinite(any) && random.nextBoolean() ? any : random.nextGaussian() * 200);
  }
}
