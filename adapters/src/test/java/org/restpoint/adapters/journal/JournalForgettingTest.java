package org.restpoint.adapters.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.stability.reading.Reading;

/** What a journal forgets is in no byte of its files. */
class JournalForgettingTest {

  private static final Instant START = Instant.parse("2026-04-02T14:00:00Z");
  private static final String SECRET = "nobodys-field";
  private static final int READINGS = 5_000;

  @TempDir Path folder;

  private JournalSettings settings() {
    return new JournalSettings(folder.resolve("bench.db"), folder.resolve("native"));
  }

  /** Everything about a sample that is to go, among as much that stays. */
  private static JournalBatch batch() {
    List<StoredReading> readings = new ArrayList<>();
    for (int i = 0; i < READINGS; i++) {
      readings.add(
          new StoredReading("no3-a", Reading.of(START.plusSeconds(i), 180 + i * 1e-3, 25)));
    }
    return new JournalBatch(
        readings,
        List.of(
            entry("gone", 1),
            entry("gone", 2),
            new StoredEntry("stays", 1, "result", "no3-a", START, "{}")),
        List.of(
            new StoredInstruction("1", "no3-a", START, "{\"sample\":\"" + SECRET + "\"}"),
            new StoredInstruction("2", "no3-a", START, "{\"do\":\"soak\"}")),
        Map.of("no3-a", "{}"),
        List.of(
            new OutgoingMessage("t", false, "{\"sample\":\"" + SECRET + "\"}"),
            new OutgoingMessage("t", false, "{}")));
  }

  private static StoredEntry entry(String id, int revision) {
    return new StoredEntry(
        id, revision, "result", "no3-a", START, "{\"sample\":\"" + SECRET + "\"}");
  }

  private static Forgetting allOfIt() {
    return new Forgetting(
        List.of("gone"),
        List.of(new StoredEntry("stays", 1, "result", "no3-a", START, "[]")),
        List.of(new StoredInstruction("1", "no3-a", START, "{}")),
        List.of(
            new Forgetting.ReadingSpan(
                "no3-a", START.plusSeconds(10), START.plusSeconds(READINGS))),
        List.of(1L));
  }

  @Test
  void whileSomebodyReadsTheJournalItSaysThatBytesAreLeftAndTheNextTimeTheyGo() throws IOException {
    try (Journal journal = new Journal(settings());
        JournalReader reader = new JournalReader(settings())) {
      journal.start();
      journal.commit(batch());
      reader.start();
      List<Forgetting.Forgotten> meanwhile = new ArrayList<>();
      reader.readings(
          SpanQuery.all(),
          reading -> {
            if (meanwhile.isEmpty()) {
              meanwhile.add(journal.forget(allOfIt()));
            }
          });
      assertThat(meanwhile).containsExactly(new Forgetting.Forgotten(READINGS - 10, false));
      assertThat(bytesWith(SECRET)).isPositive();
      assertThat(journal.forget(allOfIt())).isEqualTo(new Forgetting.Forgotten(0, true));
      assertThat(bytesWith(SECRET)).isZero();
    }
  }

  @Test
  void noByteOfItIsLeftAndTheFileShrinksAndAllElseStays() throws IOException {
    List<String> entries = new ArrayList<>();
    List<StoredReading> readings = new ArrayList<>();
    try (Journal journal = new Journal(settings())) {
      journal.start();
      journal.commit(batch());
      assertThat(bytesWith(SECRET)).isPositive();
      long before = size();
      Forgetting.Forgotten forgotten = journal.forget(allOfIt());
      assertThat(forgotten).isEqualTo(new Forgetting.Forgotten(READINGS - 10, true));
      assertThat(bytesWith(SECRET)).isZero();
      assertThat(size()).isLessThan(before / 3);
      assertThat(journal.waiting()).isEqualTo(1);
      journal.entries(EntryQuery.all(), entry -> entries.add(entry.id()));
      journal.readings(SpanQuery.all(), readings::add);
      assertThat(journal.instruction("no3-a", "1").orElseThrow().json()).isEqualTo("{}");
      assertThat(journal.entry("stays").orElseThrow().json()).isEqualTo("[]");
      assertThat(journal.instruction("no3-a", "2")).isPresent();
    }
    assertThat(entries).containsExactly("stays");
    assertThat(readings).hasSize(10);
  }

  /** Bytes in the journal and the log beside it. */
  private long size() throws IOException {
    long size = 0;
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(each -> each.toString().contains("bench.db")).toList()) {
        size += Files.size(file);
      }
    }
    return size;
  }

  private long bytesWith(String text) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(Files::isRegularFile)
          .filter(
              file -> {
                try {
                  return new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1)
                      .contains(text);
                } catch (IOException e) {
                  throw new AssertionError(e);
                }
              })
          .count();
    }
  }
}
