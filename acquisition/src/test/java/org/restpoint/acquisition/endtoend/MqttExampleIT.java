package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.broker.Mosquitto;
import org.restpoint.adapters.link.Eventually;

/** The example of a station over MQTT runs, and hears devices that send what it says. */
@EnabledOnOs(OS.LINUX)
@Timeout(120)
class MqttExampleIT {

  private static final Path EXAMPLE = Path.of("..", "adapters", "examples", "mqtt.yaml");

  private static final List<String> FILTERS =
      List.of("creek/bench/mv", "creek/inlet", "creek/nodes/+/ise", "creek/outlet/senml");

  @TempDir private Path folder;

  private static void assertReads(
      Rig rig, String probe, String topic, String message, double millivolts) {
    rig.send(topic, message);
    JsonNode raw = rig.next(probe, "raw", any -> true);
    assertThat(raw.get("millivolts").asDouble()).as(message).isCloseTo(millivolts, within(1e-9));
    if (message.contains("12.5")) {
      assertThat(raw.get("celsius").asDouble()).isEqualTo(12.5);
    }
  }

  @Test
  void eachKindOfMessageIsRead() throws IOException, InterruptedException {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Rig rig = Rig.connect(broker.url(), "creek-field")) {
      String text = Files.readString(EXAMPLE);
      assertThat(text).contains("tcp://192.168.4.2:1883");
      Path station =
          BenchStation.write(
              folder, text.replace("tcp://192.168.4.2:1883", broker.url().toString()));
      try (RunningService service = RunningService.ready(station)) {
        rig.awaitOnline(true);
        for (String filter : FILTERS) {
          Eventually.become(filter, () -> broker.logText().contains(filter + " (QoS 0)"));
        }
        hearsItsDevices(rig);
        assertThat(service.terminate()).isZero();
      }
    }
  }

  private static void hearsItsDevices(Rig rig) {
    assertReads(rig, "bench", "creek/bench/mv", "187.4", 187.4);
    String inlet =
        "{\"ts\": \"%s\", \"ise\": {\"uv\": 187400}, \"water\": {\"t\": 12.5}}"
            .formatted(Instant.now().minusSeconds(2));
    assertReads(rig, "inlet", "creek/inlet", inlet, 187.4);
    assertReads(rig, "west", "creek/nodes/west/ise", "{\"n\": 29398, \"t\": 12.5}", 187.375);
    assertReads(rig, "east", "creek/nodes/a4c1/ise", "{\"n\": 29400, \"t\": 12.5}", 187.5);
    assertReads(
        rig,
        "outlet",
        "creek/outlet/senml",
        "[{\"bn\":\"outlet:\",\"bt\":%d,\"n\":\"ise\",\"u\":\"V\",\"v\":0.1874},{\"n\":\"temp\",\"u\":\"Cel\",\"v\":12.5}]"
            .formatted(Instant.now().getEpochSecond()),
        187.4);

    rig.send("creek/inlet", inlet);
    assertThat(notice(rig, "inlet").get("code").asText()).isEqualTo("message-duplicate");
    rig.send("creek/nodes/b7/ise", "{\"n\": 29400}");
    assertThat(notice(rig, "west").get("text").asText())
        .isEqualTo("a message on creek/nodes/+/ise came under a name that no probe has: b7");
    rig.send("creek/outlet/senml", "[{\"n\":\"outlet:ise\",\"u\":\"A\",\"v\":1}]");
    assertThat(notice(rig, "outlet").get("text").asText())
        .startsWith(
            "message on creek/outlet/senml rejected: expected V or mV as unit of outlet:ise,"
                + " found A; it begins: [");
  }

  private static JsonNode notice(Rig rig, String probe) {
    return rig.next(probe, "notice", any -> true);
  }
}
