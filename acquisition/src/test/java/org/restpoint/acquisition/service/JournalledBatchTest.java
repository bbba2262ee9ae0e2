package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.event.BatchSummary;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Result;
import org.restpoint.config.station.Station;

/** A batch of standards, water and a sample whose outcomes are in the journal when it ends. */
@Timeout(60)
class JournalledBatchTest {

  private static final String PROBE = "no3-a";

  @TempDir private Path folder;
  private Instant now = Instant.parse("2026-04-02T14:00:00Z");

  private void read(LiveEngine engine, double millivolts) {
    tell(engine, "{'do':'next'}");
    engine.at(now).begin(PROBE, "{\"do\":\"in-place\"}");
    for (int i = 1; i <= 3; i++) {
      engine.read(PROBE, now.plusMillis(100L * i), millivolts);
    }
    now = now.plusSeconds(10);
  }

  private void tell(LiveEngine engine, String instruction) {
    now = now.plusSeconds(1);
    engine.at(now).tell(PROBE, instruction.replace('\'', '"'));
  }

  @Test
  void itsSummaryKnowsCalibrationsAndResultsThatWereKeptBeforeARestart() {
    Station station = Stations.brook(folder, Stations.SOON);
    try (LiveEngine engine = new LiveEngine(folder, station, now)) {
      tell(
          engine,
          "{'do':'batch','cups':[{'cup':'1','standard':'low'},{'cup':'2','standard':'high'},"
              + "{'cup':'3','sample':'S-1'},{'cup':'4','rinse':true},{'cup':'5','sample':'S-2'}]}");
      read(engine, 230);
      engine.next(Calibration.class);
      read(engine, 155.5);
      engine.next(Calibration.class);
      read(engine, 190);
      engine.next(Result.class);
      engine.end();
    }
    try (LiveEngine engine = new LiveEngine(folder, station, now)) {
      tell(engine, "{'do':'next'}");
      tell(engine, "{'do':'in-place'}");
      tell(engine, "{'do':'done'}");
      BatchSummary summary = engine.next(BatchSummary.class);
      assertThat(summary.cups())
          .extracting(BatchSummary.Cup::outcome)
          .containsExactly(
              BatchSummary.Outcome.ACCEPTED,
              BatchSummary.Outcome.ACCEPTED,
              BatchSummary.Outcome.SETTLED,
              BatchSummary.Outcome.RINSED,
              BatchSummary.Outcome.UNREAD);
      assertThat(summary.left()).containsExactly("5");
      engine.end();
      List<JsonNode> calibrations = engine.sent("/calibration");
      assertThat(summary.cups().get(0).result())
          .contains(calibrations.get(0).get("id").textValue());
    }
  }
}
