package org.restpoint.adapters.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.stability.reading.Reading;

class RecordingReaderTest {

  private static final Instant T = Instant.parse("2026-04-02T14:03:00Z");

  private final List<SkippedLine> problems = new ArrayList<>();
  private final Path folder;
  private final Path file;
  private RecordingCounts counts = new RecordingCounts(0, 0);

  RecordingReaderTest(@TempDir Path folder) {
    this.folder = folder;
    this.file = folder.resolve("made-up.csv");
  }

  @Test
  void eachRowIsAReadingOfItsProbe() throws IOException {
    assertThat(
            rows(
                """
                time,probe,millivolts,celsius
                2026-04-02T14:03:00Z,no3-a,123.45,21.5
                2026-04-02T14:03:00Z,no3-b,-7,
                2026-04-02T14:03:01.250Z,temp-1,,19.875
                """))
        .containsExactly(
            new ProbeReading("no3-a", Reading.of(T, 123.45, 21.5)),
            new ProbeReading("no3-b", Reading.ofMillivolts(T, -7)),
            new ProbeReading(
                "temp-1",
                new Reading(
                    T.plusMillis(1_250), OptionalDouble.empty(), OptionalDouble.of(19.875))));
    assertThat(problems).isEmpty();
    assertThat(counts).isEqualTo(new RecordingCounts(3, 0));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "time,probe,millivolts,celsius\r\n0.5,a,1,2\r\n",
        "time,probe,millivolts,celsius\n0.5,a,1,2",
        "\uFEFFtime,probe,millivolts,celsius\n\n0.5,a,1,2\n\n",
        "\"time\",\"probe\",\"millivolts\",\"celsius\"\n\"0.5\",\"a\",\"1\",\"2\"\n",
        " time, probe, millivolts, celsius\n 0.5, a, 1,\t2 \n"
      })
  void theFormsACsvFileComesInAreRead(String text) throws IOException {
    assertThat(rows(text))
        .containsExactly(new ProbeReading("a", Reading.of(Instant.ofEpochMilli(500), 1, 2)));
    assertThat(problems).isEmpty();
  }

  @Test
  void aRowThatIsNoReadingIsToldByItsLineAndPassedOver() throws IOException {
    List<ProbeReading> rows =
        rows(
            """
            time,probe,millivolts,celsius
            10,a,1,
            x,a,1,
            11,,1,

            12,a,1.2.3,
            13,a,1,warm
            14,a,,
            15,a,1,-300
            16,a,1
            17,a,1,2,3
            9,a,1,
            2026-04-02T14:03:00Z,a,1,
            18,a,1e999,
            19,"a
            b",1,
            20,a,2,
            """);
    assertThat(rows)
        .extracting(row -> row.reading().time().getEpochSecond())
        .containsExactly(10L, 20L);
    assertThat(problems)
        .containsExactly(
            new SkippedLine(
                3,
                Skip.TIME,
                "the time \"x\" is neither ISO 8601 in UTC (2026-04-02T14:03:00.250Z)"
                    + " nor seconds (12.25)"),
            new SkippedLine(4, Skip.PROBE, "the probe has no name"),
            new SkippedLine(6, Skip.NUMBER, "millivolts \"1.2.3\" is not a number"),
            new SkippedLine(7, Skip.NUMBER, "celsius \"warm\" is not a number"),
            new SkippedLine(8, Skip.GAP, "a reading needs a potential or a temperature"),
            new SkippedLine(9, Skip.BEYOND, "the temperature is not a number above absolute zero"),
            new SkippedLine(10, Skip.VALUES, "expected 4 values, found 3"),
            new SkippedLine(11, Skip.VALUES, "expected 4 values, found 5"),
            new SkippedLine(
                12,
                Skip.TIME_BACK,
                "the time 1970-01-01T00:00:09Z goes back behind 1970-01-01T00:00:10Z"
                    + " of a row before it"),
            new SkippedLine(
                13, Skip.TIME, "the time is ISO 8601, in the rows before it it is in seconds"),
            new SkippedLine(14, Skip.BEYOND, "the potential is not a finite number"),
            new SkippedLine(
                15,
                Skip.ENDLESS,
                "a quoted value runs over the end of the line;"
                    + " is a closing quotation mark missing?"));
    assertThat(counts).isEqualTo(new RecordingCounts(2, 12));
    assertThat(counts.rows()).isEqualTo(14);
  }

  @Test
  void anotherHeaderIsRefusedWithWhatWasFound() {
    assertThatThrownBy(() -> rows("when;probe;mV\n"))
        .isInstanceOf(RecordingException.class)
        .hasMessage(
            file
                + " line 1: expected the header time,probe,millivolts,celsius, found when;probe;mV."
                + " Its columns are \"when\", \"probe\", \"mV\". Say under link.recording which is which:"
                + " delimiter: semicolon, columns: { time: \"when\", probe: \"probe\","
                + " millivolts: \"mV\" }");
    assertThatThrownBy(() -> rows("0.5,a,1,2\n")).hasMessageContaining("found 0.5,a,1,2. Its");
    assertThatThrownBy(() -> rows(""))
        .hasMessage(
            file
                + " line 1: expected the header time,probe,millivolts,celsius,"
                + " found the end of the file");
  }

  @Test
  void aMissingRecordingIsNamed() {
    assertThatThrownBy(() -> RecordingReader.open(file, problems::add))
        .hasMessage("there is no recording " + file);
    assertThatThrownBy(() -> RecordingReader.open(folder, problems::add))
        .hasMessage(folder + " is a folder; name a recording, a CSV file");
  }

  @Test
  void aQuotationMarkThatIsNeverClosedDoesNotReadTheWholeFile() throws IOException {
    StringBuilder text = new StringBuilder("time,probe,millivolts,celsius\n1,a,1,\n2,\"a,1,\n");
    for (int i = 0; i < 50_000; i++) {
      text.append("3,a,1,\n");
    }
    Files.writeString(file, text);
    try (RecordingReader reader = RecordingReader.open(file, problems::add)) {
      assertThat(reader.next().reading().time()).isEqualTo("1970-01-01T00:00:01Z");
      assertThatThrownBy(reader::hasNext)
          .isInstanceOf(RecordingException.class)
          .hasMessage(
              file
                  + " line 3: the row is longer than 65536 characters;"
                  + " is a closing quotation mark missing there?");
    }
  }

  @Test
  void bytesThatAreNoTextAreNoReading() throws IOException {
    byte[] head = "time,probe,millivolts,celsius\n1,a,".getBytes(StandardCharsets.UTF_8);
    byte[] bytes = Arrays.copyOf(head, head.length + 3);
    bytes[head.length] = (byte) 0xff;
    bytes[head.length + 1] = (byte) ',';
    bytes[head.length + 2] = (byte) '\n';
    Files.write(file, bytes);
    assertThat(read()).isEmpty();
    assertThat(problems)
        .containsExactly(new SkippedLine(2, Skip.NUMBER, "millivolts \"\\uFFFD\" is not a number"));
  }

  @Test
  void moreProbesThanNamesAreKeptAreReadAllTheSame() throws IOException {
    StringBuilder text = new StringBuilder("time,probe,millivolts,celsius\n");
    List<String> names = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      names.add("p" + i % 100);
      text.append(i).append(",p").append(i % 100).append(",1,\n");
    }
    assertThat(rows(text.toString())).extracting(ProbeReading::probe).isEqualTo(names);
  }

  private List<ProbeReading> rows(String text) throws IOException {
    Files.writeString(file, text);
    return read();
  }

  private List<ProbeReading> read() {
    List<ProbeReading> rows = new ArrayList<>();
    try (RecordingReader reader = RecordingReader.open(file, problems::add)) {
      reader.forEachRemaining(rows::add);
      counts = reader.counts();
    }
    return rows;
  }
}
