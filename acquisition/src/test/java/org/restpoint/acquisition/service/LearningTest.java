package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Random;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Result;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.JournalBatch;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.config.station.Station;

/**
 * What a service learns of an invented electrode with a time constant of 25 s, normal noise of 0.05
 * mV from a fixed seed and a reading a second.
 */
@Timeout(120)
class LearningTest {

  private static final Instant START = Instant.parse("2026-04-02T14:00:00Z");
  private static final int LONGEST_SECONDS = 300;

  @TempDir private Path folder;
  private Station station;
  private final Random noise = new Random(5);
  private Instant now = START;

  @BeforeEach
  void read() {
    station = Stations.brook(folder);
  }

  private LiveEngine engine() {
    return new LiveEngine(folder, station, now);
  }

  /** All of a wait's readings are there before the next instruction is given. */
  private void approach(LiveEngine engine, String instruction, double rest) {
    engine.at(now).begin("no3-a", instruction);
    for (int second = 1; second <= LONGEST_SECONDS; second++) {
      double millivolts = rest + 30 * Math.exp(-second / 25.0) + 0.05 * noise.nextGaussian();
      engine.read("no3-a", now.plusSeconds(second), millivolts);
    }
    now = now.plusSeconds(LONGEST_SECONDS + 10);
  }

  private void calibrate(LiveEngine engine, String standard, double rest) {
    approach(engine, "{\"do\":\"calibrate\",\"standard\":\"%s\"}".formatted(standard), rest);
    assertThat(engine.next(Calibration.class).verdict()).isEqualTo(Calibration.Verdict.ACCEPTED);
  }

  private Result measure(LiveEngine engine, double rest) {
    approach(engine, "{\"do\":\"measure\"}", rest);
    Result result = engine.next(Result.class);
    assertThat(result.outcome()).isEqualTo(Result.Outcome.SETTLED);
    return result;
  }

  private void taught(Consumer<LiveEngine> further) {
    try (LiveEngine engine = engine()) {
      calibrate(engine, "low", 230);
      calibrate(engine, "high", 155.5);
      assertThat(measure(engine, 190).responseReadings()).isEqualTo(OptionalLong.of(2));
      further.accept(engine);
    }
  }

  @Test
  void aReplayFromTheFirstReadingOnLearnsTheSameToTheLastBit() {
    taught(
        engine -> {
          for (int i = 0; i < 5; i++) {
            assertThat(measure(engine, 180 + 6 * i).forecast()).isTrue();
          }
          engine.end();
          List<JsonNode> results = engine.sent("/result");
          assertThat(results)
              .extracting(result -> result.get("responseReadings").asInt())
              .containsExactly(2, 3, 4, 5, 6, 7);
          List<JsonNode> replayed = engine.replayed();
          assertThat(replayed)
              .filteredOn(event -> event.get("event").asText().equals("result"))
              .isEqualTo(results);
          assertThat(replayed)
              .filteredOn(event -> event.get("event").asText().equals("calibration"))
              .isEqualTo(engine.sent("/calibration"));
        });
  }

  @Test
  void anotherEngineOnTheSameJournalGoesOnKnowing() {
    taught(LiveEngine::end);
    try (LiveEngine engine = engine()) {
      assertThat(measure(engine, 200).responseReadings()).isEqualTo(OptionalLong.of(3));
    }
  }

  private void remembered(Consumer<ObjectNode> change) throws IOException {
    try (Journal journal =
        new Journal(new JournalSettings(station.journal(), folder.resolve("native")))) {
      journal.start();
      ObjectNode memory = (ObjectNode) EventJson.mapper().readTree(journal.memories().get("no3-a"));
      change.accept(memory);
      journal.commit(
          new JournalBatch(
              List.of(),
              List.of(),
              List.of(),
              Map.of("no3-a", EventJson.write(memory)),
              List.of()));
    }
  }

  @Test
  void whatAnEarlierVersionWroteIsReadAsNothingLearnt() throws IOException {
    taught(LiveEngine::end);
    remembered(
        memory -> {
          assertThat(memory.remove("response")).isNotNull();
          assertThat(memory.remove("foretold")).isNotNull();
        });
    try (LiveEngine engine = engine()) {
      assertThat(measure(engine, 200).responseReadings()).isEqualTo(OptionalLong.of(0));
    }
  }

  @Test
  void aHistoryOfOtherCurvesIsDroppedAndTheCalibrationKept() throws IOException {
    taught(LiveEngine::end);
    remembered(memory -> memory.putObject("response").put("curves", 12));
    try (LiveEngine engine = engine()) {
      assertThat(measure(engine, 200).responseReadings()).isEqualTo(OptionalLong.of(0));
      assertThat(measure(engine, 210).responseReadings()).isEqualTo(OptionalLong.of(1));
    }
  }
}
