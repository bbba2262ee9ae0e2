package org.restpoint.adapters.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.restpoint.adapters.journal.Batches.NOON;
import static org.restpoint.adapters.journal.Batches.entry;
import static org.restpoint.adapters.journal.Batches.instruction;
import static org.restpoint.adapters.journal.Batches.message;
import static org.restpoint.adapters.journal.Batches.reading;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.journal.JournalException.Kind;
import org.restpoint.stability.reading.Reading;

class JournalTest {

  private final JournalSettings settings;
  private final Journal journal;

  JournalTest(@TempDir Path folder) {
    settings = new JournalSettings(folder.resolve("bench.db"), folder.resolve("native"));
    journal = new Journal(settings);
  }

  @BeforeEach
  void start() {
    journal.start();
  }

  @AfterEach
  void close() {
    journal.close();
  }

  @Test
  void whatWasCommittedIsThereAfterARestart() {
    StoredReading reading = reading("no3-a", 1, 123.45);
    StoredEntry entry = entry("r-1", 0, 2);
    StoredInstruction instruction = instruction("no3-a", "i-1");
    journal.commit(
        new JournalBatch(
            List.of(reading),
            List.of(entry),
            List.of(instruction),
            Map.of("no3-a", "{\"state\":\"idle\"}"),
            List.of(message("a/result", "{}"))));
    journal.setFact("broker", "tcp://127.0.0.1:41883");
    journal.close();

    try (Journal again = new Journal(settings)) {
      again.start();
      assertThat(readings(again, SpanQuery.all())).containsExactly(reading);
      assertThat(entries(again, EntryQuery.all())).containsExactly(entry);
      assertThat(instructions(again, SpanQuery.all())).containsExactly(instruction);
      assertThat(again.memories()).containsExactly(Map.entry("no3-a", "{\"state\":\"idle\"}"));
      assertThat(again.fact("broker")).contains("tcp://127.0.0.1:41883");
      assertThat(again.waiting()).isEqualTo(1);
    }
  }

  @Test
  void theLatestEntriesThatHaveATextAreFoundInTheirLatestRevision() {
    journal.commit(
        new JournalBatch(
            List.of(),
            List.of(
                found("r-1", 1, "no3-a", 0, "S-17"),
                found("r-2", 1, "no3-a", 1, "S-18"),
                found("r-3", 1, "no3-a", 2, "S-17"),
                found("r-3", 2, "no3-a", 2, "S-17"),
                found("r-4", 1, "k-b", 3, "S-17")),
            List.of(),
            Map.of(),
            List.of()));

    assertThat(journal.latest("result", "no3-a", NOON, "\"S-17\""))
        .containsExactly(found("r-3", 2, "no3-a", 2, "S-17"), found("r-1", 1, "no3-a", 0, "S-17"));
    assertThat(journal.latest("result", "no3-a", NOON.plusSeconds(1), "\"S-17\""))
        .containsExactly(found("r-3", 2, "no3-a", 2, "S-17"));
    assertThat(journal.latest("notice", "no3-a", NOON, "\"S-17\"")).isEmpty();
  }

  private static StoredEntry found(
      String id, int revision, String probe, int second, String number) {
    return new StoredEntry(
        id,
        revision,
        "result",
        probe,
        NOON.plusSeconds(second),
        "{\"revision\":%d,\"number\":\"%s\"}".formatted(revision, number));
  }

  @Test
  void aMemoryAndAFactReplaceTheEarlierOne() {
    for (String state : List.of("{\"n\":1}", "{\"n\":2}")) {
      journal.commit(
          new JournalBatch(
              List.of(), List.of(), List.of(), Map.of("no3-a", state, "k-b", state), List.of()));
      journal.setFact("broker", state);
    }
    assertThat(journal.memories())
        .containsExactly(Map.entry("k-b", "{\"n\":2}"), Map.entry("no3-a", "{\"n\":2}"));
    assertThat(journal.fact("broker")).contains("{\"n\":2}");
    assertThat(journal.fact("unknown")).isEmpty();
  }

  @Test
  void aBatchWithAnEntryThatIsThereAlreadyLeavesNothingBehind() {
    journal.commit(Batches.of(entry("r-1", 0, 1)));
    JournalBatch second =
        new JournalBatch(
            List.of(reading("no3-a", 5, 1.0)),
            List.of(entry("r-2", 0, 5), entry("r-1", 0, 5)),
            List.of(instruction("no3-a", "i-9")),
            Map.of("no3-a", "{}"),
            List.of(message("a", "b")));

    assertThatThrownBy(() -> journal.commit(second))
        .isInstanceOfSatisfying(
            JournalException.class, e -> assertThat(e.kind()).isEqualTo(Kind.DUPLICATE))
        .hasMessage(
            "revision 0 of the result r-1 is in the journal already; nothing of this was written");

    assertThat(entries(journal, EntryQuery.all())).containsExactly(entry("r-1", 0, 1));
    assertThat(readings(journal, SpanQuery.all())).isEmpty();
    assertThat(journal.instruction("no3-a", "i-9")).isEmpty();
    assertThat(journal.memories()).isEmpty();
    assertThat(journal.unsent(0, 10)).isEmpty();
    assertThat(journal.waiting()).isZero();
    journal.commit(Batches.of(entry("r-2", 0, 6)));
    assertThat(entries(journal, EntryQuery.all())).hasSize(2);
  }

  @Test
  void aLaterRevisionStandsBesideTheEarlierOne() {
    journal.commit(Batches.of(entry("r-1", 0, 1)));
    journal.commit(Batches.of(entry("r-1", 1, 1)));
    assertThat(entries(journal, EntryQuery.all()))
        .containsExactly(entry("r-1", 0, 1), entry("r-1", 1, 1));
  }

  @Test
  void anInstructionIsKnownByItsProbeAndIdentity() {
    journal.commit(Batches.of(instruction("no3-a", "i-1"), instruction("no3-b", "i-1")));
    assertThat(journal.instruction("no3-a", "i-1")).contains(instruction("no3-a", "i-1"));
    assertThat(journal.instruction("no3-c", "i-1")).isEmpty();
    assertThatThrownBy(() -> journal.commit(Batches.of(instruction("no3-a", "i-1"))))
        .hasMessage(
            "the instruction i-1 of the probe no3-a is in the journal already;"
                + " nothing of this was written");
  }

  @Test
  void rowsComeInTheOrderOfTimeAndOfWritingWithinOneTime() {
    journal.commit(
        JournalBatch.ofReadings(
            List.of(
                reading("b", 3, 3.0),
                reading("a", 1, 1.0),
                reading("b", 1, 1.5),
                reading("a", 2, 2.0))));
    assertThat(readings(journal, SpanQuery.all()))
        .extracting(each -> each.reading().millivolts().getAsDouble())
        .containsExactly(1.0, 1.5, 2.0, 3.0);
  }

  @Test
  void rowsAreChosenByProbeTimeKindAndCount() {
    journal.commit(
        JournalBatch.ofReadings(
            List.of(reading("a", 1, 1.0), reading("b", 2, 2.0), reading("a", 3, 3.0))));
    StoredEntry result = entry("r-1", 0, 1);
    StoredEntry notice = new StoredEntry("n-1", 0, "notice", "no3-a", NOON.plusSeconds(2), "{}");
    journal.commit(Batches.of(result, notice));

    assertThat(readings(journal, SpanQuery.ofProbe("a"))).hasSize(2);
    assertThat(readings(journal, span(NOON.plusSeconds(2), NOON.plusSeconds(3))))
        .containsExactly(reading("b", 2, 2.0));
    assertThat(readings(journal, span(NOON.plusNanos(1_000_000_001), NOON.plusSeconds(3))))
        .as("a bound between two milliseconds leaves out the one before it")
        .containsExactly(reading("b", 2, 2.0));
    assertThat(entries(journal, EntryQuery.ofKind("notice"))).containsExactly(notice);
    assertThat(
            entries(
                journal,
                EntryQuery.of(
                    Optional.empty(),
                    Optional.of("no3-a"),
                    Optional.empty(),
                    Optional.empty(),
                    OptionalInt.of(1))))
        .containsExactly(result);
  }

  @Test
  void aRawReadingComesBackToTheLastBit() {
    List<StoredReading> stored = new ArrayList<>();
    double[] values = {-0.0, 0.0, 0.1 + 0.2, Double.MIN_VALUE, -Double.MAX_VALUE, 1e15, -7.0};
    for (int i = 0; i < values.length; i++) {
      stored.add(reading("a", i, values[i]));
    }
    stored.add(new StoredReading("a", Reading.ofMillivolts(NOON.plusSeconds(100), 1.0)));
    stored.add(
        new StoredReading(
            "t",
            new Reading(NOON.plusSeconds(101), OptionalDouble.empty(), OptionalDouble.of(-0.0))));
    stored.add(new StoredReading("a", Reading.ofMillivolts(NOON.plusMillis(101_001), 1.0)));
    journal.commit(JournalBatch.ofReadings(stored));
    assertThat(readings(journal, SpanQuery.all())).isEqualTo(stored);
  }

  @Test
  void textOfEveryScriptComesBackAsItWent() {
    String json = "{\"sample\":\"Señor Nuñez, 畑 7, \uD83D\uDCA7, \u202ex\u202c, '\\\"%_ \0 end\"}";
    StoredEntry entry = new StoredEntry("é-\uD83C\uDF31", 0, "result", "prøve", NOON, json);
    journal.commit(
        new JournalBatch(
            List.of(),
            List.of(entry),
            List.of(),
            Map.of("prøve", json),
            List.of(new OutgoingMessage("restpoint/wïllow", true, json))));
    assertThat(entries(journal, EntryQuery.all())).containsExactly(entry);
    assertThat(journal.memories()).containsEntry("prøve", json);
    assertThat(journal.unsent(0, 1))
        .singleElement()
        .satisfies(
            message -> {
              assertThat(message.topic()).isEqualTo("restpoint/wïllow");
              assertThat(message.payload()).isEqualTo(json);
              assertThat(message.retained()).isTrue();
            });
  }

  @Test
  void anEmptyBatchIsNoTrouble() {
    journal.commit(JournalBatch.ofReadings(List.of()));
    assertThat(readings(journal, SpanQuery.all())).isEmpty();
  }

  @Test
  void aClosedJournalSaysSo() {
    journal.close();
    journal.close();
    assertThatThrownBy(() -> journal.commit(Batches.of(entry("r-1", 0, 1))))
        .isInstanceOfSatisfying(
            JournalException.class, e -> assertThat(e.kind()).isEqualTo(Kind.CLOSED))
        .hasMessage("the journal %s is not open".formatted(settings.file()));
  }

  private static SpanQuery span(Instant from, Instant to) {
    return new SpanQuery(Optional.empty(), Optional.of(from), Optional.of(to), OptionalInt.empty());
  }

  private static List<StoredReading> readings(Journal journal, SpanQuery span) {
    List<StoredReading> rows = new ArrayList<>();
    journal.readings(span, rows::add);
    return rows;
  }

  private static List<StoredEntry> entries(Journal journal, EntryQuery query) {
    List<StoredEntry> rows = new ArrayList<>();
    journal.entries(query, rows::add);
    return rows;
  }

  private static List<StoredInstruction> instructions(Journal journal, SpanQuery span) {
    List<StoredInstruction> rows = new ArrayList<>();
    journal.instructions(span, rows::add);
    return rows;
  }
}
