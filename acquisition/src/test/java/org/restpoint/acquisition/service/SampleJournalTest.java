package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.config.station.Station;

/** Records of samples in the journal of a service that stops and goes on. */
@Timeout(120)
class SampleJournalTest {

  private static final Instant START = Instant.parse("2026-04-02T14:00:00Z");

  @TempDir private Path folder;
  private Station station;

  @BeforeEach
  void read() {
    station = Stations.brook(folder, Stations.SOON);
  }

  private static Instant at(long millis) {
    return START.plusMillis(millis);
  }

  private static void three(LiveEngine engine, long firstMillis, double millivolts) {
    for (int i = 0; i < 3; i++) {
      engine.read("no3-a", at(firstMillis + 100L * i), millivolts);
    }
  }

  private static String sample(String fields) {
    return "{\"do\":\"sample\",\"sample\":{\"number\":\"W 1/a\",%s}}".formatted(fields);
  }

  private LiveEngine session() {
    LiveEngine engine = new LiveEngine(folder, station, START);
    engine.begin("no3-a", "{\"do\":\"calibrate\",\"standard\":\"low\"}");
    three(engine, 100, 230);
    engine.next(Calibration.class);
    engine.at(at(1000)).begin("no3-a", "{\"do\":\"calibrate\",\"standard\":\"high\"}");
    three(engine, 1100, 155.5);
    engine.next(Calibration.class);
    engine.at(at(2000)).begin("no3-a", "{\"do\":\"measure\",\"sample\":\"W 1/a\"}");
    engine.tell("no3-a", sample("\"kind\":\"tile water\",\"grower\":\"Ada\""));
    engine.next(SampleRecord.class);
    three(engine, 2100, 190);
    assertThat(engine.next(Result.class).flags()).containsExactly("holding-unknown");
    engine
        .at(at(3000))
        .tell("no3-a", sample("\"taken\":\"2026-04-02T08:00:00-05:00\",\"cooled\":true"))
        .tell("no3-a", sample("\"grower\":\"Bea\""));
    assertThat(engine.next(Result.class).flags()).isEmpty();
    assertThat(engine.next(Result.class).revision()).isEqualTo(3);
    return engine;
  }

  @Test
  void aReplayOfTheJournalSaysTheSameRecordsAndRevisions() {
    try (LiveEngine engine = session().end()) {
      List<JsonNode> replayed = engine.replayed();
      assertThat(replayed)
          .filteredOn(event -> event.get("event").asText().equals("result"))
          .isEqualTo(engine.sent("/result"))
          .hasSize(3);
      assertThat(replayed)
          .filteredOn(event -> event.get("event").asText().equals("sample"))
          .isEqualTo(
              engine.sent("/answer").stream()
                  .filter(answer -> answer.at("/outcome/event").asText().equals("sample"))
                  .map(answer -> answer.get("outcome"))
                  .toList())
          .hasSize(3);
      assertThat(engine.sent("/sample")).as("a record has no topic").isEmpty();
    }
  }

  @Test
  void aServiceThatIsBackCorrectsWhatItSaidBefore() {
    session().close();
    try (LiveEngine engine = new LiveEngine(folder, station, at(60_000))) {
      engine.tell("no3-a", sample("\"grower\":\"\""));
      SampleRecord record = engine.next(SampleRecord.class);
      assertThat(record.revision()).isEqualTo(4);
      assertThat(record.changed().get(0).before().orElseThrow().asText()).isEqualTo("Bea");
      Result again = engine.next(Result.class);
      assertThat(again.revision()).isEqualTo(4);
      assertThat(again.time()).isEqualTo(at(2300));
      assertThat(again.sample()).contains(record.sample());
      assertThat(again.sample().orElseThrow().has("grower")).isFalse();

      engine.at(at(61_000)).begin("no3-a", "{\"do\":\"measure\",\"sample\":\"W 1/a\"}");
      three(engine, 61_100, 190);
      Result another = engine.next(Result.class);
      assertThat(another.sample()).contains(record.sample());
      assertThat(another.revision()).isEqualTo(1);
    }
  }
}
