package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URI;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.broker.Mosquitto;
import org.restpoint.adapters.journal.EntryQuery;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.journal.SpanQuery;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.mqtt.Subscriber;
import org.restpoint.adapters.mqtt.Subscriber.Heard;
import org.restpoint.adapters.serial.PseudoTerminal;

/** What a service still knows, owes and refuses after it was killed or away. */
@EnabledOnOs(OS.LINUX)
@Timeout(300)
class RestartIT {

  private static final String TOPIC = "bench/no3";

  @TempDir private Path folder;

  private Path bench(URI broker) {
    return BenchStation.write(
        folder,
        """
        station: willow-bench
        broker: { url: "%s" }
        standards:
          low:  { concentration: 5 mg/L,   basis: as-N }
          high: { concentration: 100 mg/L, basis: as-N }
        probes:
          no3-a:
            analyte: nitrate
            basis: as-N
            link: { mqtt: { topic: bench/no3, payload: number } }
            temperature: { fixed: 22 Cel }
            settle: { rule: consecutive, readings: 3 }
            calibrate: { standards: [low, high] }
        """
            .formatted(broker));
  }

  @Test
  void theCalibrationIsInForceAgainAndWhatWasUnderWayIsToldAsInterrupted() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Rig rig = Rig.connect(broker.url(), BenchStation.NAME)) {
      Path station = bench(broker.url());
      JsonNode calibration;
      try (RunningService first = RunningService.ready(station)) {
        rig.awaitOnline(true);
        rig.calibrate("no3-a", TOPIC, "low", "230.0");
        calibration = rig.calibrate("no3-a", TOPIC, "high", "155.5");
        rig.tell("no3-a", "{\"id\":\"cut\",\"do\":\"measure\"}");
        rig.answer("no3-a", "cut", "accepted");
        first.kill();
      }
      rig.awaitOnline(false);

      try (RunningService second = RunningService.ready(station)) {
        JsonNode notice = rig.next("no3-a", "notice", any -> true);
        assertThat(notice.get("code").asText()).isEqualTo("interrupted");
        assertThat(notice.get("text").asText())
            .isEqualTo("measure was cut short when the service stopped");
        assertThat(notice.get("remedy").asText()).isEqualTo("Give the instruction again.");
        rig.next("no3-a", "state", state -> state.get("state").asText().equals("ready"));
        rig.tell("no3-a", "{\"id\":\"again\",\"do\":\"measure\"}");
        rig.answer("no3-a", "again", "accepted");
        for (int i = 0; i < 5; i++) {
          rig.send(TOPIC, "190.0");
        }
        JsonNode result = rig.answer("no3-a", "again", "done").get("outcome");
        assertThat(result.get("outcome").asText()).isEqualTo("settled");
        assertThat(result.at("/calibration/id")).isEqualTo(calibration.get("id"));
        assertThat(result.at("/calibration/slopeMillivoltsPerDecade"))
            .isEqualTo(calibration.get("slopeMillivoltsPerDecade"));
        second.terminate();
      }
    }
  }

  @Test
  void whatWaitedAtTheBrokerIsCarriedOutWhenItIsFreshAndRefusedWhenItIsLateOrRetained() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Rig rig = Rig.connect(broker.url(), BenchStation.NAME)) {
      Path station = bench(broker.url());
      rig.tellRetained("no3-a", "{\"id\":\"kept\",\"do\":\"soak\"}");
      try (RunningService first = RunningService.ready(station)) {
        assertReason(
            rig.answer("no3-a", "kept", "refused"),
            "instruction-retained",
            "the instruction is retained by the broker, so it may be from any time",
            "Send it without the retain flag.");
        assertThat(first.terminate()).isZero();
      }

      Instant given = Instant.now().minusSeconds(61).truncatedTo(ChronoUnit.SECONDS);
      rig.tell("no3-a", "{\"id\":\"late\",\"time\":\"%s\",\"do\":\"soak\"}".formatted(given));
      rig.tell(
          "no3-a", "{\"id\":\"fresh\",\"time\":\"%s\",\"do\":\"soak\"}".formatted(Instant.now()));
      try (RunningService second = RunningService.ready(station)) {
        JsonNode late = rig.answer("no3-a", "late", "refused");
        assertReason(
            late,
            "instruction-late",
            "the instruction was given at %s and it is %s now; it may be 1 min off"
                .formatted(given, late.get("time").asText()),
            "Give it again; if it was given just now, set the clocks of both machines.");
        rig.answer("no3-a", "fresh", "done");
        assertThat(second.terminate()).isZero();
      }
    }
  }

  private static void assertReason(JsonNode answer, String code, String text, String remedy) {
    assertThat(answer.at("/reasons/0/code").asText()).isEqualTo(code);
    assertThat(answer.at("/reasons/0/text").asText()).isEqualTo(text);
    assertThat(answer.at("/reasons/0/remedy").asText()).isEqualTo(remedy);
  }

  /** Results come by themselves twice a second, while the service is killed twice. */
  @Test
  void whatWasCommittedWithoutABrokerIsPublishedLaterNothingLostAndNothingTwiceById()
      throws Exception {
    Mosquitto broker = Mosquitto.open(folder);
    List<JsonNode> heard = new ArrayList<>();
    try (broker;
        PseudoTerminal meter = new PseudoTerminal();
        ScriptedElectrode electrode = new ScriptedElectrode(BenchStation.LOW, 12.5)) {
      electrode.sendingTo(meter);
      Path station = stream(broker.url(), meter.path());
      try (RunningService first = RunningService.ready(station)) {
        Eventually.become("three results in the journal", () -> journalled() >= 3);
        first.kill();
      }

      broker.start();
      try (Subscriber farm = Subscriber.connect(broker.url(), "farm")) {
        farm.subscribe(BenchStation.topic("result"), 1).subscribe("marker", 1);
        long owed = journalled();
        try (RunningService second = RunningService.ready(station)) {
          while (heard.size() < owed + 3) {
            heard.add(Ran.parse(farm.next().payload()));
          }
          second.kill();
        }
        try (RunningService third = RunningService.ready(station)) {
          while (heard.size() < owed + 9) {
            heard.add(Ran.parse(farm.next().payload()));
          }
          assertThat(third.terminate()).isZero();
        }
        farm.publish("marker", "end", 1, false);
        for (Heard next = farm.next(); !next.topic().equals("marker"); next = farm.next()) {
          heard.add(Ran.parse(next.payload()));
        }
      }
      List<JsonNode> kept =
          Ran.restpoint(folder, "records", station, "--as", "jsonl").well().json();
      Map<String, JsonNode> byId = byId(kept);
      assertThat(byId).as("each id once").hasSize(kept.size());
      heard.addAll(stillOwed());
      assertThat(byId(heard)).isEqualTo(byId);
    }
  }

  private static Map<String, JsonNode> byId(List<JsonNode> results) {
    Map<String, JsonNode> byId = new HashMap<>();
    for (JsonNode result : results) {
      JsonNode earlier = byId.put(result.get("id").asText(), result);
      assertThat(earlier == null || earlier.equals(result)).as("one id, one result").isTrue();
    }
    return byId;
  }

  private Path stream(URI broker, Path port) {
    return BenchStation.write(
        folder,
        """
        station: willow-bench
        broker: { url: "%s" }
        standards:
          low: { concentration: 5 mg/L, basis: as-N }
        probes:
          no3-a:
            analyte: nitrate
            basis: as-N
            link: %s
            temperature: { from: reading }
            settle: { rule: consecutive, readings: 3 }
            calibrate: { standards: [low] }
            routine: { every: 500 ms }
        """
            .formatted(broker, BenchStation.serial(port)));
  }

  private JournalSettings journal() {
    return new JournalSettings(folder.resolve("willow-bench.db"), folder.resolve("native"));
  }

  private long journalled() {
    List<String> ids = new ArrayList<>();
    try (JournalReader reader = new JournalReader(journal())) {
      reader.start();
      reader.entries(
          new EntryQuery(
              Optional.of("result"),
              new SpanQuery(
                  Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.empty())),
          entry -> ids.add(entry.id()));
    }
    return ids.size();
  }

  /** What the last service committed and had no time to send before its end. */
  private List<JsonNode> stillOwed() {
    try (Journal journal = new Journal(journal())) {
      journal.start();
      return journal.unsent(0, 10_000).stream()
          .filter(message -> message.topic().equals(BenchStation.topic("result")))
          .map(message -> Ran.parse(message.payload()))
          .toList();
    }
  }
}
