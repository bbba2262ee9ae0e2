package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.Station;

/** Checks with a real journal, over a restart, and replayed. */
@Timeout(120)
class JournalledChecksTest {

  private static final double MILLIVOLTS_A_DECADE = -57;

  @TempDir private Path folder;
  private Instant now = Instant.parse("2026-04-02T14:00:00Z");

  private Station station() {
    return Stations.read(
        folder,
        """
        station: bench
        broker: { embedded: { port: 0 } }
        standards:
          low:  { concentration: 5 mg/L,   basis: as-N }
          high: { concentration: 100 mg/L, basis: as-N }
          second: { concentration: 20 mg/L, basis: as-N }
        probes:
          no3-a:
            analyte: nitrate
            basis: as-N
            link: { mqtt: { topic: bench/no3, payload: number } }
            temperature: { fixed: 22 Cel }
            settle: { rule: consecutive, readings: 3, within: 0.1 mV, not-before: 1 s }
            calibrate: { standards: [low, high] }
            checks: { check-standard: { standard: second, every: 10 samples } }
        """);
  }

  private void read(LiveEngine engine, String instruction, double milligramsPerLitre) {
    engine.at(now).begin("no3-a", instruction.replace('\'', '"'));
    for (int second = 1; second <= 5; second++) {
      double millivolts = 230 + MILLIVOLTS_A_DECADE * Math.log10(milligramsPerLitre);
      engine.read("no3-a", now.plusSeconds(second), millivolts);
    }
    now = now.plusSeconds(10);
  }

  @Test
  void aDuplicateFindsItsSampleInTheJournalAndAFailedCheckRevisesWhatIsThere() {
    try (LiveEngine engine = new LiveEngine(folder, station(), now)) {
      read(engine, "{'do':'calibrate','standard':'low'}", 5);
      read(engine, "{'do':'calibrate','standard':'high'}", 100);
      read(engine, "{'do':'measure','sample':'S-17'}", 20);
      engine.end();
    }
    now = now.plusSeconds(60);
    try (LiveEngine engine = new LiveEngine(folder, station(), now)) {
      read(engine, "{'do':'verify','role':'duplicate','sample':'S-17'}", 20.4);
      read(engine, "{'do':'measure','sample':'S-18'}", 12);
      read(engine, "{'do':'verify','standard':'second'}", 15);
      engine.end();
      List<JsonNode> results = engine.sent("/result");
      assertThat(results)
          .extracting(
              result ->
                  "%s %d %s %s"
                      .formatted(
                          result.at("/sample/number").asText("-"),
                          result.path("revision").intValue(),
                          result.at("/verification/verdict").asText("-"),
                          result.path("flags")))
          .containsExactly(
              "S-17 1 - []",
              "S-17 1 passed []",
              "S-18 1 - []",
              "- 1 failed [\"check-off\"]",
              "S-17 2 - [\"check-failed-after\"]",
              "S-18 2 - [\"check-failed-after\"]");
      assertThat(engine.replayed())
          .filteredOn(event -> event.get("event").asText().equals("result"))
          .isEqualTo(results);
      assertThat(engine.replayed())
          .filteredOn(event -> event.get("event").asText().equals("notice"))
          .isEqualTo(engine.sent("/notice"));
    }
  }
}
