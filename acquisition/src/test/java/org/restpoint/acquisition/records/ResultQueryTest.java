package org.restpoint.acquisition.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.journal.SpanQuery;

/** Which results are written. */
class ResultQueryTest {

  @TempDir private Path folder;
  private BenchJournal journal = new BenchJournal(Path.of(""));

  @BeforeEach
  void keep() {
    journal =
        new BenchJournal(folder)
            .number("r-1", 1, "2026-04-02T14:00:00Z", "20.0", "{\"number\":\"S-1\"}")
            .number("r-2", 1, "2026-04-02T14:01:00Z", "21.0", "{\"number\":\"S-2\"}")
            .number("r-1", 2, "2026-04-02T14:00:00Z", "20.5", "{\"number\":\"S-1\"}")
            .number("r-1", 3, "2026-04-02T14:00:00Z", "20.6", "{\"number\":\"S-1\"}")
            .number("r-3", 1, "2026-04-02T14:02:00Z", "22.0", "{}");
  }

  private String csv(Optional<String> sample, boolean latest) {
    ResultQuery query = new ResultQuery(SpanQuery.all(), sample, latest);
    return journal.written(
        (reader, out) -> new RecordWriter(reader, "bench", out).results(query, true));
  }

  private static String[] idsAndRevisions(String csv) {
    return csv.lines().skip(1).map(line -> line.substring(0, 5)).toArray(String[]::new);
  }

  @Test
  void allRevisionsAreWrittenUnlessTheLatestAloneIsAskedFor() {
    assertThat(idsAndRevisions(csv(Optional.empty(), false)))
        .containsExactly("r-1,1", "r-1,2", "r-1,3", "r-2,1", "r-3,1");
  }

  @Test
  void ofEachResultTheLatestRevisionAlone() {
    assertThat(idsAndRevisions(csv(Optional.empty(), true)))
        .containsExactly("r-1,3", "r-2,1", "r-3,1");
  }

  @Test
  void oneSampleAlone() {
    assertThat(idsAndRevisions(csv(Optional.of("S-1"), true))).containsExactly("r-1,3");
  }

  @Test
  void aPartOfANumberIsNoNumber() {
    assertThat(idsAndRevisions(csv(Optional.of("S"), false))).isEmpty();
  }
}
