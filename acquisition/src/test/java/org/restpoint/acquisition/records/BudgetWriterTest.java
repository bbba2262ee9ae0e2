package org.restpoint.acquisition.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.JournalBatch;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.journal.SpanQuery;
import org.restpoint.adapters.journal.StoredEntry;

/** The budgets of results that a journal keeps, as tables and as CSV. */
class BudgetWriterTest {

  private static final Instant TIME = Instant.parse("2026-04-02T14:03:00Z");
  private static final SpanQuery ALL =
      new SpanQuery(Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.empty());

  private static final String CONCENTRATION =
      """
      {"event":"result","id":"%s","revision":1,"station":"bench","probe":"no3-a",
       "time":"2026-04-02T14:03:00Z","outcome":"settled","readings":12,"elapsedSeconds":12.0,
       "rule":"consecutive 10 within 0.1 mV","forecast":false,"quality":1,"flags":[],"reasons":[],
       "caution":"",
       "concentration":{"value":%s,"unit":"%s","basis":"%s","uncertainty":%s,"coverage":2,
         "relation":"="},
       "budget":[
         {"source":"potential at rest","estimate":183.28,"standardUncertainty":0.058,"unit":"mV",
          "sensitivity":-0.8,"contribution":0.0464,"sharePercent":14.0},
         {"source":"standard solutions","contribution":0.115,"sharePercent":86.0}]}""";

  private static final String UNSETTLED =
      """
      {"event":"result","id":"r-0","revision":1,"station":"bench","probe":"no3-a",
       "time":"2026-04-02T14:02:00Z","outcome":"unsettled","readings":12,"elapsedSeconds":60.0,
       "rule":"consecutive 10 within 0.1 mV","forecast":false,"quality":4,"flags":["unsettled"],
       "reasons":[],"caution":""}""";

  @TempDir private Path folder;

  private String written(boolean csv, String... results) {
    JournalSettings settings =
        new JournalSettings(folder.resolve("bench.db"), folder.resolve("native"));
    try (Journal journal = new Journal(settings)) {
      journal.start();
      int number = 0;
      for (String json : results) {
        StoredEntry entry = new StoredEntry("r-" + number++, 1, "result", "no3-a", TIME, json);
        journal.commit(new JournalBatch(List.of(), List.of(entry), List.of(), Map.of(), List.of()));
      }
    }
    StringWriter text = new StringWriter();
    try (JournalReader reader = new JournalReader(settings)) {
      reader.start();
      new BudgetWriter(reader, text).write(ResultQuery.of(ALL), csv);
    }
    return text.toString();
  }

  private static String result(String id) {
    return CONCENTRATION.formatted(id, "20.0", "mg/L", "as-N", "0.248");
  }

  @Test
  void aBudgetIsATableThatEndsInTheResult() {
    assertThat(written(false, UNSETTLED, result("r-1")))
        .isEqualTo(
            """
            source                   x      u(x)  unit         c      u(y)   share
            potential at rest   183.28  0.058000  mV    -0.80000  0.046400  14.0 %
            standard solutions                                     0.11500  86.0 %
            r-1 = 20.000, u = 0.12400 mg/L as-N (k = 1)

            """);
  }

  @Test
  void aPhIsToldWithoutABasis() {
    assertThat(written(false, CONCENTRATION.formatted("r-1", "7.62", "[pH]", "as-ion", "0.022")))
        .endsWith("r-1 = 7.6200, u = 0.011000 [pH] (k = 1)\n\n");
  }

  @Test
  void asCsvEachSourceIsARow() {
    assertThat(written(true, UNSETTLED, result("r-1"), result("r-2")))
        .isEqualTo(
            """
            id,source,estimate,standardUncertainty,unit,sensitivity,contribution,sharePercent\r
            r-1,potential at rest,183.28,0.058,mV,-0.8,0.0464,14.0\r
            r-1,standard solutions,,,,,0.115,86.0\r
            r-2,potential at rest,183.28,0.058,mV,-0.8,0.0464,14.0\r
            r-2,standard solutions,,,,,0.115,86.0\r
            """);
  }

  @Test
  void withoutSettledResultsThereIsNoTable() {
    assertThat(written(false, UNSETTLED)).isEmpty();
  }

  @Test
  void withoutSettledResultsCsvIsItsHeader() {
    assertThat(written(true, UNSETTLED))
        .isEqualTo(
            "id,source,estimate,standardUncertainty,unit,sensitivity,contribution,sharePercent\r\n");
  }
}
