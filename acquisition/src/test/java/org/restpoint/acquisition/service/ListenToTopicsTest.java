package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.command.Commands;
import org.restpoint.adapters.broker.EmbeddedBroker;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.mqtt.BrokerAddress;
import org.restpoint.adapters.mqtt.BrokerException;
import org.restpoint.adapters.mqtt.Caller;
import org.restpoint.config.station.Station;

/** An integrator with devices that publish: listen to everything, paste, fill in, run. */
@Timeout(120)
class ListenToTopicsTest {

  private static final String STATION =
      """
      station: first-day
      broker: { url: "%s" }
      standards:
        low: { concentration: 5 mg/L, basis: as-N }
        high: { concentration: 100 mg/L, basis: as-N }
      """;

  @TempDir Path folder;
  private final EmbeddedBroker broker = new EmbeddedBroker(0);
  private final ScheduledExecutorService publishing = Executors.newSingleThreadScheduledExecutor();
  private final StringWriter err = new StringWriter();
  private String url = "tcp://127.0.0.1:1";
  private Caller devices = caller(url);

  private static Caller caller(String url) {
    return new Caller(
        BrokerAddress.anonymous(URI.create(url)),
        "devices",
        InstantSource.system(),
        System::nanoTime);
  }

  @BeforeEach
  void start() throws Exception {
    url = "tcp://127.0.0.1:" + broker.start();
    devices = caller(url);
    devices.open("nobody/speaks/here");
  }

  @AfterEach
  void end() {
    publishing.shutdownNow();
    devices.close();
    broker.close();
  }

  private Future<?> publish() {
    AtomicInteger n = new AtomicInteger();
    return publishing.scheduleWithFixedDelay(
        () -> {
          int digit = n.getAndIncrement() % 3;
          send("bench/west/ise", "{\"mv\": 187.4%d, \"water\": {\"temp\": 21.5}}".formatted(digit));
          send("bench/east/ise", "{\"mv\": -92.1%d, \"water\": {\"temp\": 21.4}}".formatted(digit));
          send(
              "field/node-7",
              "[{\"bn\": \"node-7:\", \"n\": \"ise\", \"u\": \"V\", \"v\": 0.187%d},"
                      .formatted(digit)
                  + " {\"n\": \"temp\", \"u\": \"Cel\", \"v\": 12.5}]");
          send("field/plain", "18%d.5".formatted(digit));
          send(
              "field/timed",
              "{\"ts\": %d, \"e\": 120.%d, \"battery\": 87}"
                  .formatted(Instant.now().toEpochMilli(), digit));
          send("field/door", "open");
        },
        0,
        100,
        TimeUnit.MILLISECONDS);
  }

  private void send(String topic, String payload) {
    try {
      devices.send(topic, payload);
    } catch (BrokerException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void everyTopicThatIsUnderstoodBecomesAProbeThatReads() throws InterruptedException {
    Future<?> published = publish();
    StringWriter out = new StringWriter();
    int status =
        Commands.line()
            .setOut(new PrintWriter(out, true))
            .setErr(new PrintWriter(err, true))
            .execute("listen", "--topic", "#", "--broker", url, "--for", "3s");
    assertThat(status).as(err.toString()).isZero();
    assertThat(published.isDone()).as("the devices go on").isFalse();

    String section = out.toString();
    assertThat(section)
        .contains("topic: bench/+/ise", "millivolts: /mv", "celsius: /water/temp")
        .contains("payload: senml", "volts: 'node-7:ise'", "celsius: 'node-7:temp'")
        .contains("topic: field/plain", "payload: number")
        .contains("millivolts: /e", "time: /ts", "time-unit: ms");
    assertThat(err.toString())
        .containsPattern("bench/west/ise: \\d+ messages, one every 0\\.\\d s, read")
        .containsPattern("field/door: \\d+ messages, one every 0\\.\\d s, not read");

    Station station =
        Stations.read(
            folder,
            STATION.formatted(url)
                + section.replaceAll(
                    "(?m)^    # (?=analyte:|basis:|temperature:|calibrate:)", "    "));
    assertThat(station.probes().keySet())
        .containsExactlyInAnyOrder("west", "east", "node-7", "plain", "timed");
    Surroundings surroundings =
        new Surroundings(
            folder.resolve("native"), InstantSource.system(), System::nanoTime, 1, event -> {});
    try (Service service = Service.start(station, surroundings)) {
      Eventually.become(
          "all are read",
          () ->
              station.probes().keySet().stream()
                  .allMatch(probe -> service.link(probe).orElseThrow().counts().accepted() > 0));
      assertThat(station.probes().keySet())
          .allSatisfy(
              probe -> assertThat(service.link(probe).orElseThrow().counts().rejected()).isZero());
    }
  }

  @Test
  void aTopicOnWhichNothingComesAndABrokerThatIsNotThereAreSaid() {
    assertThat(
            Commands.line()
                .setErr(new PrintWriter(err, true))
                .execute("listen", "--topic", "bench/no3", "--broker", url, "--for", "300ms"))
        .isEqualTo(5);
    assertThat(err.toString()).contains("no message came on bench/no3");
    devices.close();
    broker.close();
    assertThat(
            Commands.line()
                .setErr(new PrintWriter(err, true))
                .execute("listen", "--topic", "bench/no3", "--broker", url, "--for", "300ms"))
        .isEqualTo(4);
    assertThat(err.toString()).contains("restpoint: broker " + url);
  }
}
