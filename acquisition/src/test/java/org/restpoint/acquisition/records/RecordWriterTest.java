package org.restpoint.acquisition.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.JournalBatch;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.journal.SpanQuery;
import org.restpoint.adapters.journal.StoredEntry;
import org.restpoint.adapters.journal.StoredInstruction;
import org.restpoint.adapters.journal.StoredReading;
import org.restpoint.stability.reading.Reading;

/** What a journal keeps, as text. */
class RecordWriterTest {

  private static final Instant TIME = Instant.parse("2026-04-02T14:03:00Z");
  private static final SpanQuery ALL =
      new SpanQuery(Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.empty());

  @TempDir private Path folder;
  private final StringWriter text = new StringWriter();
  private JournalSettings settings;
  private Journal journal;

  @BeforeEach
  void open() {
    settings = new JournalSettings(folder.resolve("bench.db"), folder.resolve("native"));
    journal = new Journal(settings);
    journal.start();
  }

  @AfterEach
  void close() {
    journal.close();
  }

  private void keep(
      List<StoredReading> readings,
      List<StoredEntry> entries,
      List<StoredInstruction> instructions) {
    journal.commit(new JournalBatch(readings, entries, instructions, Map.of(), List.of()));
  }

  private interface Writing {
    void with(RecordWriter writer);
  }

  private String written(Writing writing) {
    try (JournalReader reader = new JournalReader(settings)) {
      reader.start();
      writing.with(new RecordWriter(reader, "bench", text));
    }
    return text.toString();
  }

  private static StoredEntry entry(String id, String kind, String json) {
    return new StoredEntry(id, 1, kind, "no3-a", TIME, json);
  }

  @Test
  void aTableQuotesWhatHasCommasAndQuotationMarksAndLeavesEmptyWhatIsAbsent() {
    keep(
        List.of(),
        List.of(
            entry(
                "n-1",
                "notice",
                "{\"event\":\"notice\",\"id\":\"n-1\",\"station\":\"bench\",\"probe\":\"no3-a\",\"time\":\"2026-04-02T14:03:00Z\",\"code\":\"line-rejected\",\"text\":\"a line, \\\"Err\\\"\"}")),
        List.of());
    assertThat(written(writer -> writer.entries("notice", ALL, true)))
        .isEqualTo(
            """
            id,station,probe,time,code,text,remedy\r
            n-1,bench,no3-a,2026-04-02T14:03:00Z,line-rejected,"a line, ""Err""\",\r
            """);
  }

  @Test
  void aCellOfManyNamesThemOneAfterTheOther() {
    String json =
        """
        {"id":"c-1","revision":1,"verdict":"refused","points":[{"standard":"low"},{"standard":"high"}],
         "flags":["one-point"],"reasons":[{"code":"slope-low"},{"code":"slope-none"}]}""";
    keep(List.of(), List.of(entry("c-1", "calibration", json)), List.of());
    assertThat(written(writer -> writer.entries("calibration", ALL, true)).lines().skip(1))
        .containsExactly("c-1,1,,,,refused,,,,,,,,low high,one-point,slope-low slope-none");
  }

  @Test
  void linesAreTheVeryTextThatWasKept() {
    String json = "{\"event\":\"result\",\"id\":\"r-1\",\"value\":20.000000000000004}";
    keep(List.of(), List.of(entry("r-1", "result", json)), List.of());
    assertThat(written(writer -> writer.entries("result", ALL, false))).isEqualTo(json + "\n");
  }

  @Test
  void aLongTableIsWrittenToItsEnd() {
    keep(
        IntStream.range(0, 10_000)
            .mapToObj(
                i ->
                    new StoredReading("no3-a", Reading.of(TIME.plusMillis(i), 0.1 + i / 1e3, 21.5)))
            .toList(),
        List.of(),
        List.of());
    List<String> lines = written(writer -> writer.readings(ALL, true)).lines().toList();
    assertThat(lines).hasSize(10_001);
    assertThat(lines.get(0)).isEqualTo("time,probe,millivolts,celsius");
    assertThat(lines.get(10_000)).isEqualTo("2026-04-02T14:03:09.999Z,no3-a,10.099,21.5");
  }

  @Test
  void whatIsWrittenToStaysOpen() throws IOException {
    written(writer -> writer.readings(ALL, true));
    text.write("more\n");
    assertThat(text.toString().lines()).containsExactly("time,probe,millivolts,celsius", "more");
  }

  @Test
  void anEmptyTableHasItsHeader() {
    assertThat(written(writer -> writer.entries("result", ALL, true)))
        .startsWith("id,revision,station,probe,time,outcome,value,unit,basis,uncertainty,")
        .endsWith(",caution\r\n");
  }

  @Test
  void instructionsAreATableToo() {
    keep(
        List.of(),
        List.of(),
        List.of(
            new StoredInstruction(
                "7",
                "no3-a",
                TIME,
                "{\"time\":\"2026-04-02T14:03:00Z\",\"probe\":\"no3-a\",\"id\":\"7\",\"do\":\"measure\",\"sample\":{\"number\":\"S-17\"}}")));
    assertThat(written(writer -> writer.instructions(ALL, true)))
        .isEqualTo(
            """
            time,probe,id,do,standard,sample,minutes,days,into,part,recipe\r
            2026-04-02T14:03:00Z,no3-a,7,measure,,"{""number"":""S-17""}",,,,,\r
            """);
  }
}
