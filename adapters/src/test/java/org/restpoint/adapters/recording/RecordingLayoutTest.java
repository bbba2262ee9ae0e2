package org.restpoint.adapters.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.Meanings;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.adapters.recording.TextForm.DecimalMark;
import org.restpoint.adapters.recording.TextForm.Delimiter;
import org.restpoint.stability.reading.Reading;

class RecordingLayoutTest {

  static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  static final TextForm GERMAN =
      new TextForm(Delimiter.SEMICOLON, DecimalMark.COMMA, Encoding.LATIN_1, Optional.of('#'));

  static final RecordingLayout SPLIT =
      new RecordingLayout(
          GERMAN,
          true,
          columns("Datum", "Uhrzeit", "Kanal", "U/mV", "T/\u00B0C"),
          Meanings.MILLIVOLTS_AND_CELSIUS,
          new TimeForm.Pattern("d.M.yyyy HH:mm:ss", Optional.of(BERLIN)),
          Set.of("NaN", "-9999"));

  static final RecordingLayout TAB =
      new RecordingLayout(
          new TextForm(Delimiter.TAB, DecimalMark.POINT, Encoding.UTF_16, Optional.empty()),
          true,
          columns("", "time", "", "E", ""),
          Meanings.MILLIVOLTS,
          new TimeForm.SecondsSince1970(),
          Set.of());

  private final List<SkippedLine> skipped = new ArrayList<>();
  private final Path file;
  private RecordingCounts counts = new RecordingCounts(0, 0);

  RecordingLayoutTest(@TempDir Path folder) {
    this.file = folder.resolve("made-up.csv");
  }

  @Test
  void whatIsNoReadingIsToldByItsLine() throws IOException {
    assertThat(
            rows(
                """
                # made up
                # and more

                T/\u00B0C;Bemerkung;U/mV;Kanal;Uhrzeit;Datum
                21,5;a;-12,25;a;14:03:00;2.4.2026
                NaN;;;b;14:03:01;2.4.2026
                21,5;"; ""so"" it is";-9999;b;14:03:02;2.4.2026
                T/\u00B0C;Bemerkung;U/mV;Kanal;Uhrzeit;Datum
                # in between
                21,5;;1.5;a;14:03:03;2.4.2026
                21,5;;1,5;a;14:03:04;31.2.2026
                21,5;;1,5;a;14:03:05;
                ;;1,5;a;14:03:06;2.4.2026
                ;;1,5;a;14:03:07;2.4.2026;;
                ;;1,5;a;14:03:08;2.4.2026;;9
                ;;1,5;a
                """,
                StandardCharsets.ISO_8859_1,
                SPLIT))
        .containsExactly(
            new ProbeReading("a", Reading.of(at("12:03:00"), -12.25, 21.5)),
            new ProbeReading(
                "b", new Reading(at("12:03:02"), OptionalDouble.empty(), OptionalDouble.of(21.5))),
            new ProbeReading("a", Reading.ofMillivolts(at("12:03:06"), 1.5)),
            new ProbeReading("a", Reading.ofMillivolts(at("12:03:07"), 1.5)));
    assertThat(skipped)
        .containsExactly(
            new SkippedLine(1, Skip.COMMENT, "a comment"),
            new SkippedLine(2, Skip.COMMENT, "a comment"),
            new SkippedLine(6, Skip.GAP, "a reading needs a potential or a temperature"),
            new SkippedLine(8, Skip.HEADER_AGAIN, "the header stands here again"),
            new SkippedLine(9, Skip.COMMENT, "a comment"),
            new SkippedLine(10, Skip.NUMBER, "millivolts \"1.5\" is not a number"),
            new SkippedLine(
                11,
                Skip.TIME,
                "the time \"31.2.2026 14:03:04\" is not written as d.M.yyyy HH:mm:ss"),
            new SkippedLine(
                12, Skip.TIME, "the time \" 14:03:05\" is not written as d.M.yyyy HH:mm:ss"),
            new SkippedLine(15, Skip.VALUES, "expected 6 values, found 8"),
            new SkippedLine(16, Skip.VALUES, "expected 6 values, found 4"));
    assertThat(counts).isEqualTo(new RecordingCounts(4, 6));
  }

  @Test
  void rowsOfDifferentProbesAreOrderedAndThoseOfOneMustBe() throws IOException {
    assertThat(
            rows(
                """
                Datum;Uhrzeit;Kanal;U/mV;T/\u00B0C
                2.4.2026;14:03:05;a;5;
                2.4.2026;14:03:01;b;1;
                2.4.2026;14:03:04;a;4;
                2.4.2026;14:03:05;b;5;
                2.4.2026;14:04:00;a;60;
                2.4.2026;14:03:06;b;6;
                2.4.2026;14:03:04;c;4;
                2.4.2026;14:03:55;c;55;
                """,
                StandardCharsets.ISO_8859_1,
                SPLIT))
        .extracting(row -> row.probe() + row.reading().millivolts().getAsDouble())
        .containsExactly("b1.0", "a5.0", "b5.0", "b6.0", "c55.0", "a60.0");
    assertThat(skipped)
        .containsExactly(
            new SkippedLine(
                4,
                Skip.TIME_BACK,
                "the time 2026-04-02T12:03:04Z goes back behind 2026-04-02T12:03:05Z of a row"
                    + " before it"),
            new SkippedLine(
                8,
                Skip.TIME_BACK,
                "the time 2026-04-02T12:03:04Z goes back more than 10 s behind rows of other"
                    + " probes before it"));
    assertThat(counts).isEqualTo(new RecordingCounts(6, 2));
  }

  @Test
  void theHoursAroundAChangeOfDaylightSavingAreReadAsTheyPass() throws IOException {
    RecordingLayout layout =
        new RecordingLayout(
            TextForm.NATIVE,
            false,
            new RecordingColumns(
                Optional.empty(),
                Optional.of(new Column.Numbered(1)),
                Optional.empty(),
                Optional.of(new Column.Numbered(3)),
                Optional.empty()),
            Meanings.MILLIVOLTS,
            new TimeForm.Iso(Optional.of(BERLIN)),
            Set.of());
    assertThat(
            rows(
                """
                2026-03-29 01:59,,1
                2026-03-29 02:30,,2
                2026-03-29T03:00:00,5,3
                2026-10-25 02:30:00,,4
                2026-10-25 02:59:59.9996,,5
                2026-10-25 02:00:00,,6
                2026-10-25 02:59:59,,7
                2026-10-25 02:00:00,,8
                2026-10-25T03:00:00+02:00,,9
                2026-10-25T04:00:00Z,,10
                """,
                StandardCharsets.UTF_8,
                layout))
        .extracting(row -> row.reading().time().toString())
        .containsExactly(
            "2026-03-29T00:59:00Z",
            "2026-03-29T01:00:00Z",
            "2026-10-25T00:30:00Z",
            "2026-10-25T01:00:00Z",
            "2026-10-25T01:00:00Z",
            "2026-10-25T01:59:59Z",
            "2026-10-25T04:00:00Z");
    assertThat(skipped)
        .extracting(SkippedLine::line, SkippedLine::skip)
        .containsExactly(
            tuple(2L, Skip.LOCAL_TIME), tuple(8L, Skip.TIME_BACK), tuple(9L, Skip.TIME_BACK));
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-16LE", "UTF-16BE", "UTF-16", "UTF-8", "UTF-32LE"})
  void aByteOrderMarkOrTheFirstLetterTellsTheEncoding(String charset) throws IOException {
    boolean marked = charset.startsWith("UTF-8") || charset.startsWith("UTF-32");
    assertThat(
            rows(
                (marked ? "\uFEFF" : "") + "time\tE\n1775138580.2505\t-1.5\n",
                Charset.forName(charset),
                TAB))
        .containsExactly(
            new ProbeReading(
                "", Reading.ofMillivolts(Instant.parse("2026-04-02T14:03:00.250Z"), -1.5)));
  }

  @Test
  void theNativeHeaderIsKnownInAnyLayout() throws IOException {
    assertThat(
            rows("\n\"time\", probe,millivolts,celsius\n1,a,2.5,\n", StandardCharsets.UTF_8, SPLIT))
        .containsExactly(
            new ProbeReading("a", Reading.ofMillivolts(Instant.ofEpochSecond(1), 2.5)));
  }

  @Test
  void numbersMeanWhatTheLayoutSays() throws IOException {
    RecordingLayout layout =
        new RecordingLayout(
            TextForm.NATIVE,
            true,
            columns("", "time", "probe", "E", "T"),
            new Meaning(
                Optional.of(PotentialScale.VOLTS), Optional.of(TemperatureScale.FAHRENHEIT)),
            new TimeForm.MillisecondsSince1970(),
            Set.of());
    assertThat(
            rows(
                """
                time,probe,E,T
                1000,a,-0.125,77
                2000,t,,50
                3000,a,11,77
                4000,a,,
                5000,t,,x
                """,
                StandardCharsets.UTF_8,
                layout))
        .containsExactly(
            new ProbeReading("a", Reading.of(Instant.ofEpochSecond(1), -125, 25)),
            new ProbeReading(
                "t",
                new Reading(
                    Instant.ofEpochSecond(2), OptionalDouble.empty(), OptionalDouble.of(10))));
    assertThat(skipped)
        .containsExactly(
            new SkippedLine(4, Skip.BEYOND, "11000 mV is outside -10000 to 10000 mV"),
            new SkippedLine(5, Skip.GAP, "a reading needs a potential or a temperature"),
            new SkippedLine(6, Skip.NUMBER, "fahrenheit \"x\" is not a number"));
    assertThat(rows("time\tE\n1\t\n", StandardCharsets.UTF_16LE, TAB)).isEmpty();
    assertThat(skipped.get(3))
        .isEqualTo(new SkippedLine(2, Skip.GAP, "a reading needs a potential or a temperature"));
  }

  private static RecordingColumns columns(
      String date, String time, String probe, String potential, String temperature) {
    return new RecordingColumns(
        column(date), column(time), column(probe), column(potential), column(temperature));
  }

  private static Optional<Column> column(String heading) {
    return heading.isEmpty() ? Optional.empty() : Optional.of(new Column.Headed(heading));
  }

  private static Instant at(String time) {
    return Instant.parse("2026-04-02T%sZ".formatted(time));
  }

  private List<ProbeReading> rows(String text, Charset charset, RecordingLayout layout)
      throws IOException {
    Files.write(file, text.getBytes(charset));
    List<ProbeReading> rows = new ArrayList<>();
    try (RecordingReader reader = RecordingReader.open(file, layout, skipped::add)) {
      reader.forEachRemaining(rows::add);
      counts = reader.counts();
    }
    return rows;
  }
}
