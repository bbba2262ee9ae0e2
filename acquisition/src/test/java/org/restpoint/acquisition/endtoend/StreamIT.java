package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.mqtt.Subscriber;

/** Readings by message, results by themselves, and a service that brings its own broker. */
@Timeout(300)
class StreamIT {

  private static final long INTERVAL_MILLIS = 2000;

  @TempDir private Path folder;
  private RunningService service;
  private Rig rig;

  @BeforeEach
  void start() {
    service =
        RunningService.ready(
            BenchStation.write(
                folder,
                """
                station: brook
                broker: { embedded: { port: 0 } }
                http: 127.0.0.1:0
                standards:
                  low:  { concentration: 5 mg/L,   basis: as-N }
                  high: { concentration: 100 mg/L, basis: as-N }
                probes:
                  bare:
                    analyte: nitrate
                    basis: as-N
                    link: { mqtt: { topic: brook/bare, payload: number } }
                    temperature: { fixed: 12 Cel }
                    settle: { rule: consecutive }
                    calibrate: { standards: [low, high] }
                    routine: { every: 2 s }
                  json:
                    analyte: nitrate
                    basis: as-N
                    link: { mqtt: { topic: brook/json, millivolts: /reading/mv, celsius: /t } }
                    temperature: { from: reading }
                    settle: { rule: consecutive, readings: 3 }
                    calibrate: { standards: [low, high] }
                """));
    rig = Rig.connect(service.broker(), "brook").awaitOnline(true);
  }

  @AfterEach
  void end() {
    rig.close();
    service.close();
  }

  /** A device that sends the same number every 50 ms until it is closed. */
  private final class Device implements AutoCloseable {

    private final CountDownLatch end = new CountDownLatch(1);
    private final Thread thread;
    private volatile String number;

    Device(String number) {
      this.number = number;
      thread = new Thread(this::send, "device");
      thread.start();
    }

    private void send() {
      try {
        do {
          rig.send("brook/bare", number);
        } while (!end.await(50, TimeUnit.MILLISECONDS));
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }

    void reads(String next) {
      number = next;
    }

    @Override
    public void close() {
      end.countDown();
      try {
        thread.join();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private JsonNode result(String flags) {
    return rig.next("bare", "result", result -> result.get("flags").toString().equals(flags));
  }

  private void calibrate(String standard) {
    rig.tell(
        "bare", "{\"id\":\"%1$s\",\"do\":\"calibrate\",\"standard\":\"%1$s\"}".formatted(standard));
    assertThat(rig.answer("bare", standard, "done").at("/outcome/verdict").asText())
        .isEqualTo("accepted");
  }

  @Test
  void aStreamHasExactlyOneResultAnIntervalWhateverHappens() {
    try (Subscriber logger = Subscriber.connect(service.broker(), "logger")) {
      logger.subscribe("restpoint/brook/bare/result", 1);
      try (Device device = new Device("230.0")) {
        result("[\"not-calibrated\"]");
        calibrate("low");
        device.reads("155.5");
        calibrate("high");
        device.reads("190.0");
        result("[\"in-maintenance\"]");
        rig.tell("bare", "{\"id\":\"back\",\"do\":\"rinsed\"}");
        JsonNode settled = result("[]");
        assertThat(settled.get("outcome").asText()).isEqualTo("settled");
        assertThat(settled.at("/concentration/value").asDouble())
            .as("all at one temperature, so nothing but binary rounding is between")
            .isCloseTo(5 * Math.pow(20, 40 / 74.5), within(1e-9));
      }
      JsonNode silent = result("[\"no-readings\"]");
      assertThat(silent.get("quality").asInt()).isEqualTo(9);
      assertThat(silent.has("concentration")).isFalse();
      assertOneAnInterval(logger, silent.get("id").asText());
    }
  }

  private static void assertOneAnInterval(Subscriber logger, String lastId) {
    List<JsonNode> results = new ArrayList<>();
    do {
      results.add(Ran.parse(logger.next().payload()));
    } while (!results.get(results.size() - 1).get("id").asText().equals(lastId));
    for (int i = 1; i < results.size(); i++) {
      assertThat(interval(results.get(i)))
          .as("%s", results)
          .isEqualTo(interval(results.get(i - 1)) + 1);
    }
  }

  private static long interval(JsonNode result) {
    return Instant.parse(result.get("time").asText()).toEpochMilli() / INTERVAL_MILLIS;
  }

  @Test
  void messagesAreReadByTheirPointersAndAllOfThemAreCounted() throws InterruptedException {
    rig.tell("json", "{\"id\":\"1\",\"do\":\"calibrate\",\"standard\":\"low\"}");
    rig.answer("json", "1", "accepted");
    rig.send("brook/json", "230.0");
    rig.send("brook/json", "{\"reading\":{\"mv\":\"high\"},\"t\":12.5}");
    for (int i = 0; i < 5; i++) {
      rig.send("brook/json", "{\"reading\":{\"mv\":230.0,\"unit\":\"mV\"},\"t\":12.5}");
    }
    JsonNode calibration = rig.answer("json", "1", "done").get("outcome");
    assertThat(calibration.at("/points/0/millivolts").asDouble()).isEqualTo(230);
    assertThat(calibration.at("/points/0/celsius").asDouble()).isEqualTo(12.5);
    assertThat(calibration.get("flags").toString()).isEqualTo("[\"one-point\",\"ideal-slope\"]");

    Eventually.become(
        "all messages are counted", () -> metric("restpoint_link_received_total") == 7);
    assertThat(metric("restpoint_link_accepted_total")).isEqualTo(5);
    assertThat(metric("restpoint_link_rejected_total")).isEqualTo(2);
    assertThat(metric("restpoint_link_dropped_total")).isZero();
    assertThat(metric("restpoint_calibrations_accepted_total")).isEqualTo(1);
    assertThat(metric("restpoint_link_up")).isEqualTo(1);

    HttpResponse<String> health = Loopback.get(service.http().resolve("/health"));
    assertThat(health.statusCode()).isEqualTo(200);
    JsonNode report = Ran.parse(health.body());
    assertThat(report.get("status").asText()).isEqualTo("ok");
    assertThat(report.at("/probes/json/condition").asText()).isEqualTo("reading");
    assertThat(report.at("/broker/working").asBoolean()).isTrue();
    assertThat(report.at("/journal/working").asBoolean()).isTrue();
    service.message(
        message ->
            message.startsWith(
                "json: message on brook/json rejected: there is nothing at /reading/mv; it begins:"
                    + " 230.0. Compare the message with the probe's link settings"));
  }

  private double metric(String name) {
    String wanted = name + "{probe=\"json\"} ";
    return Loopback.get(service.http().resolve("/metrics"))
        .body()
        .lines()
        .filter(line -> line.startsWith(wanted))
        .mapToDouble(line -> Double.parseDouble(line.substring(wanted.length())))
        .findFirst()
        .orElse(-1);
  }
}
