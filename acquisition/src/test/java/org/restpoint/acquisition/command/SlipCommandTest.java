package org.restpoint.acquisition.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.restpoint.acquisition.command.Said.run;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.JournalBatch;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.journal.StoredEntry;

/** A slip from the journal and from lines, and what goes wrong on the way. */
class SlipCommandTest {

  private static final String ID = "no3-a-20260402T140625.000Z";

  @TempDir private Path folder;
  private Path station = Path.of("");

  @BeforeEach
  void writeTheStation() throws IOException {
    station = Files.writeString(folder.resolve("station.yaml"), WillowBench.FILE);
  }

  private static String water() {
    try (InputStream file =
        Objects.requireNonNull(SlipCommandTest.class.getResourceAsStream("/slip/water.json"))) {
      return new String(file.readAllBytes(), StandardCharsets.UTF_8)
          .replaceAll("\n *", " ")
          .strip();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String printed(Object... arguments) {
    PrintStream before = System.out;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    System.setOut(new PrintStream(out, true, StandardCharsets.UTF_8));
    try {
      assertThat(run(arguments)).isEqualTo(new Said(0, "", ""));
    } finally {
      System.setOut(before);
    }
    return out.toString(StandardCharsets.UTF_8);
  }

  private void keep(StoredEntry... entries) {
    try (Journal journal =
        new Journal(
            new JournalSettings(folder.resolve("willow-bench.db"), folder.resolve("native")))) {
      journal.start();
      journal.commit(new JournalBatch(List.of(), List.of(entries), List.of(), Map.of(), List.of()));
    }
  }

  private static StoredEntry entry(String id, int revision, String kind, String json) {
    return new StoredEntry(
        id, revision, kind, "no3-a", Instant.parse("2026-04-02T14:06:25Z"), json);
  }

  @Test
  void theLatestRevisionIsPrinted() {
    keep(
        entry(ID, 1, "result", water()),
        entry(ID, 2, "result", water().replace("\"revision\": 1", "\"revision\": 2")));
    assertThat(printed("slip", station, ID, "--zone", "-05:00"))
        .startsWith("Nitrate: sample W-17\n" + "=".repeat(42))
        .contains("Grower  Åsa Lindqvist\n")
        .contains("  19.98 ± 0.25 mg/L nitrate-N\n")
        .contains("Taken   2026-04-02 07:30 UTC-05:00\n")
        .endsWith("Revision  2\n");
    assertThat(printed("slip", station, ID, "--as", "html"))
        .startsWith("<!DOCTYPE html>")
        .contains("Åsa Lindqvist");
  }

  @Test
  void aResultThatNoJournalKeepsHasItsSlipFromALine() throws IOException {
    Path lines = Files.writeString(folder.resolve("answers.jsonl"), "\n{}\n" + water() + "\n");
    assertThat(printed("slip", station, "--from", lines, "--width", 80))
        .contains("  19.98 ± 0.25 mg/L nitrate-N\n");
    assertThat(folder.resolve("willow-bench.db")).doesNotExist();
  }

  @Test
  void anIdThatIsNoResults() {
    keep(entry("c-1", 1, "calibration", "{}"));
    run("slip", station, "r-x")
        .isRefusal(
            2,
            "r-x is not the id of a result of station willow-bench; the ids of all results are in:"
                + " restpoint records "
                + station);
    run("slip", station, "c-1")
        .isRefusal(
            2,
            "c-1 is a calibration and not a result of station willow-bench; the ids of all results"
                + " are in: restpoint records "
                + station);
  }

  @Test
  void neitherIdNorLines() {
    run("slip", station).isRefusal(2, "expected the id of a result, or --from FILE; found neither");
  }

  @Test
  void linesWithoutAResult() throws IOException {
    Path lines = Files.writeString(folder.resolve("lines.txt"), "E=187.42 mV\n");
    run("slip", station, "--from", lines)
        .isRefusal(
            4,
            lines
                + " holds no result; expected lines of JSON, as tell --wait, replay or records --as"
                + " jsonl print them");
    run("slip", station, "--from", folder.resolve("absent"))
        .isRefusal(4, folder.resolve("absent") + " is not there");
  }

  @Test
  void aResultOfAnotherStationIsNotReadByThisFile() throws IOException {
    Path lines =
        Files.writeString(folder.resolve("l.jsonl"), water().replace("willow-bench", "creek"));
    run("slip", station, "--from", lines)
        .isRefusal(
            2,
            "the result %s is of station creek, and %s is station willow-bench; name the station file of the result"
                .formatted(ID, station));
  }

  @Test
  void aWidthThatNoPaperHas() {
    run("slip", station, "x", "--width", "20")
        .isRefusal(2, "--width: expected 32 to 100 columns; found 20");
  }
}
