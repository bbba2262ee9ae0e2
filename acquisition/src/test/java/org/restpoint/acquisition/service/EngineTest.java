package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;

/** In whatever order things reach the engine, a replay of its journal gives the same numbers. */
@Timeout(120)
class EngineTest {

  private static final Instant START = Instant.parse("2026-04-02T14:00:00Z");

  @TempDir private Path folder;
  private LiveEngine engine;

  @BeforeEach
  void calibrate() {
    engine =
        new LiveEngine(
            folder,
            Stations.read(
                folder,
                """
                station: brook
                broker: { embedded: { port: 0 } }
                standards:
                  low:  { concentration: 5 mg/L,   basis: as-N }
                  high: { concentration: 100 mg/L, basis: as-N }
                probes:
                  no3-a:
                    analyte: nitrate
                    basis: as-N
                    link: { mqtt: { topic: brook/no3, payload: number } }
                    temperature: { probe: temp-1, stale-after: 10 min }
                    settle: { rule: consecutive, readings: 3, give-up-after: 10 s }
                    calibrate: { standards: [low, high] }
                  temp-1:
                    measures: temperature
                    link: { mqtt: { topic: brook/temperature, celsius: "" } }
                  temp-2:
                    measures: temperature
                    link: { mqtt: { topic: air/temperature, celsius: "" } }
                """),
            START);
    engine.warm("temp-1", at(0), 21);
    engine.begin("no3-a", "{\"do\":\"calibrate\",\"standard\":\"low\"}");
    three(100, 230);
    engine.next(Calibration.class);
    engine.at(at(1000)).begin("no3-a", "{\"do\":\"calibrate\",\"standard\":\"high\"}");
    three(1100, 155.5);
    engine.next(Calibration.class);
    engine.at(at(2000)).begin("no3-a", "{\"id\":\"m\",\"do\":\"measure\"}");
  }

  private static Instant at(long millis) {
    return START.plusMillis(millis);
  }

  private void three(long firstMillis, double millivolts) {
    for (int i = 0; i < 3; i++) {
      engine.read("no3-a", at(firstMillis + 100L * i), millivolts);
    }
  }

  @AfterEach
  void end() {
    engine.close();
  }

  private void assertThatAReplayGivesTheSame() {
    engine.end();
    List<JsonNode> replayed = engine.replayed();
    assertThat(replayed)
        .filteredOn(event -> event.get("event").asText().equals("result"))
        .isEqualTo(engine.sent("/result"))
        .isNotEmpty();
    assertThat(replayed)
        .filteredOn(event -> event.get("event").asText().equals("calibration"))
        .isEqualTo(engine.sent("/calibration"))
        .hasSize(2);
  }

  @Test
  void aTemperatureThatComesBehindTheReadingItWouldHaveChanged() {
    three(2100, 190);
    engine.warm("temp-1", at(2299), 25);
    assertThat(engine.next(Result.class).celsius()).hasValue(21);
    assertThatAReplayGivesTheSame();
  }

  @Test
  void aReadingThatComesBehindAnInstructionOfItsMillisecond() {
    engine.read("no3-a", at(2100), 190).read("no3-a", at(2200), 190);
    engine.at(at(2300)).tell("no3-a", "{\"id\":\"n\",\"do\":\"measure\"}");
    engine.read("no3-a", at(2300), 190);
    assertThat(engine.next(Result.class).flags()).containsExactly("busy");
    assertThat(engine.next(Result.class).time()).isEqualTo(at(2301));
    assertThatAReplayGivesTheSame();
  }

  @Test
  void aReadingThatComesAfterItsDeadlineHasPassed() {
    engine.read("no3-a", at(2100), 190).read("no3-a", at(2200), 190);
    engine.at(at(20_000));
    assertThat(engine.next(Result.class).outcome()).isEqualTo(Result.Outcome.UNSETTLED);
    engine.read("no3-a", at(11_900), 190);
    assertThatAReplayGivesTheSame();
  }

  @Test
  void aReadingThatComesBehindOneOfAProbeThatSharesNothingWithIt() {
    engine.read("no3-a", at(2100), 190).read("no3-a", at(2200), 190);
    engine.warm("temp-2", at(12_100), 4);
    engine.read("no3-a", at(11_999), 190);
    assertThat(engine.next(Result.class).outcome()).isEqualTo(Result.Outcome.UNSETTLED);
    assertThatAReplayGivesTheSame();
  }

  @Test
  void aClockThatIsPutBackAnHourIsFollowedAndTheReadingBeginsAgain() {
    engine.at(at(-3_590_000));
    engine.read("no3-a", at(-3_590_000), 190);
    assertThat(engine.next(Notice.class).code()).isEqualTo("clock-put-back");
    three(-3_589_900, 190);
    Result result = engine.next(Result.class);
    assertThat(result.outcome()).isEqualTo(Result.Outcome.SETTLED);
    assertThat(result.time()).isEqualTo(at(-3_589_700));
    assertThat(result.flags()).contains("calibration-old");
  }

  @Test
  void aClockThatIsPutBackByASecondGoesUnnoticed() {
    engine.at(at(1500));
    three(1600, 190);
    assertThat(engine.next(Result.class).outcome()).isEqualTo(Result.Outcome.SETTLED);
    assertThatAReplayGivesTheSame();
  }
}
