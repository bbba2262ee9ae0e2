package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.broker.Mosquitto;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.stability.reading.Reading;

/** Nodes in a field at a real broker: many on one topic, in packs, with times, and twice. */
@Timeout(60)
class MqttFieldTest {

  private static final Instant NOON = Instant.parse("2026-04-02T12:00:00Z");
  private static final Duration LONG = Duration.ofMinutes(10);
  private static final String JSON = "{\"ts\":%d,\"mv\":%s}";

  private final CollectingListener heard = new CollectingListener();
  private final CollectingListener other = new CollectingListener();
  private final Mosquitto broker;
  private final MqttReadings readings;
  private final Subscriber device;

  MqttFieldTest(@TempDir Path folder) {
    broker = Mosquitto.open(folder).start();
    device = Subscriber.connect(broker.url(), "device");
    readings =
        new MqttReadings(
            BrokerAddress.anonymous(broker.url()),
            "readings",
            OutboxPublisherTest.quick(),
            InstantSource.fixed(NOON),
            System::nanoTime);
  }

  @AfterEach
  void endAll() {
    readings.close();
    device.close();
    broker.close();
  }

  private MqttLink link(
      String filter, String name, MqttReadingFormat format, CollectingListener l) {
    return readings.link(
        new MqttLinkSettings(
            new TopicFilter(filter), name, format, MqttLinkSettings.USUAL_TIME_WITHIN, LONG),
        l);
  }

  private static void listen(MqttLink... links) {
    for (MqttLink link : links) {
      link.start();
    }
    for (MqttLink link : links) {
      while (link.check().condition() != Condition.READING) {
        Thread.onSpinWait();
      }
    }
  }

  private void send(String topic, String payload) {
    device.publish(topic, payload, 1, false);
  }

  @Test
  void oneTopicServesManyProbesAndIsSubscribedToOnce() throws InterruptedException {
    CollectingListener third = new CollectingListener();
    MqttReadingFormat format = Formats.json(Formats.millivolts("/mv"));
    MqttLink exact = link("field/no3-a/ise", "", Formats.json(Formats.millivolts("/raw")), third);
    MqttLink first = link("field/+/ise", "no3-a", format, heard);
    MqttLink second = link("field/+/ise", "node-7", format, other);
    listen(exact, first, second);

    send("field/no3-a/ise", "{\"mv\": 1, \"raw\": 2}");
    send("field/node-7/ise", "{\"mv\": 3}");
    send("field/node-7/battery", "{\"mv\": 4}");
    send("field/no3-a/ise", "{\"mv\": 5, \"raw\": 6}");

    assertThat(heard.nextReadings(2))
        .containsExactly(Reading.ofMillivolts(NOON, 1), Reading.ofMillivolts(NOON, 5));
    assertThat(other.nextReading()).isEqualTo(Reading.ofMillivolts(NOON, 3));
    assertThat(third.nextReadings(2))
        .containsExactly(Reading.ofMillivolts(NOON, 2), Reading.ofMillivolts(NOON, 6));
    Eventually.become("counted", () -> first.counts().equals(new LinkCounts(2, 2, 0, 0)));
    Eventually.become("counted", () -> exact.counts().equals(new LinkCounts(2, 2, 0, 0)));
    Eventually.become("counted", () -> second.counts().equals(new LinkCounts(1, 1, 0, 0)));
    assertThat(readings.unclaimed()).isZero();
    assertThat(broker.logText())
        .containsOnlyOnce("field/+/ise (QoS 0)")
        .doesNotContain("field/no3-a/ise (QoS 0)");

    first.close();
    send("field/no3-a/ise", "{\"mv\": 7, \"raw\": 8}");
    assertThat(third.nextReading()).isEqualTo(Reading.ofMillivolts(NOON, 8));
    assertThat(readings.unclaimed()).isZero();
  }

  @Test
  void aMessageThatNoProbeClaimsIsCountedAndToldOnceInAWhile() throws InterruptedException {
    MqttLink link = link("field/+/ise", "no3-a", Formats.json(Formats.millivolts("/mv")), heard);
    listen(link);
    for (int i = 0; i < 50; i++) {
      send("field/node-9/ise", "{\"mv\": 1}");
    }
    send("field/no3-a/ise", "{\"mv\": 2}");

    assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOON, 2));
    LinkTrouble told = heard.nextTrouble();
    assertThat(told.code()).isEqualTo("message-unclaimed");
    assertThat(told.text()).endsWith(" on field/+/ise came under a name that no probe has: node-9");
    assertThat(told.remedy())
        .isEqualTo(
            "Name a probe so, or set captured of the probe that is meant; or keep the device off"
                + " this topic.");
    Eventually.become("counted", () -> readings.unclaimed() == 50);
    Eventually.become("counted", () -> link.counts().equals(new LinkCounts(1, 1, 0, 0)));
    assertThat(heard.troubles()).isEmpty();
  }

  @Test
  void aPackBringsItsReadingsInTheOrderOfTheirTimes() {
    MqttLink link =
        link("field/+/senml", "node-7", Formats.senml(Formats.both("n7:e", "n7:t")), heard);
    listen(link);
    send(
        "field/node-7/senml",
        "[{\"bn\":\"n7:\",\"bt\":%d,\"n\":\"t\",\"u\":\"Cel\",\"v\":12.5},{\"n\":\"e\",\"u\":\"V\",\"v\":0.25},"
                .formatted(NOON.getEpochSecond())
            + "{\"n\":\"e\",\"u\":\"mV\",\"t\":-10,\"v\":249.5}]");
    assertThat(heard.nextReadings(2))
        .containsExactly(
            Reading.ofMillivolts(NOON.minusSeconds(10), 249.5), Reading.of(NOON, 250, 12.5));
  }

  @Test
  void whatComesTwiceIsToldApartAndAStaleOneIsRefused() throws InterruptedException {
    MqttLink link =
        link("field/+/ise", "no3-a", Formats.json(Formats.millivolts("/mv"), "/ts"), heard);
    long now = NOON.getEpochSecond();
    device.publish("field/no3-a/ise", JSON.formatted(now - 2, "186"), 1, true);
    listen(link);
    send("field/no3-a/ise", JSON.formatted(now - 1, "187"));
    send("field/no3-a/ise", JSON.formatted(now - 1, "187"));
    send("field/no3-a/ise", JSON.formatted(now - 1, "187.5"));
    send("field/no3-a/ise", JSON.formatted(now - 3_600, "180"));
    send("field/no3-a/ise", JSON.formatted(now, "188"));

    assertThat(heard.nextReadings(2))
        .containsExactly(
            Reading.ofMillivolts(NOON.minusSeconds(1), 187), Reading.ofMillivolts(NOON, 188));
    Eventually.become("counted", () -> link.counts().equals(new LinkCounts(6, 2, 4, 0)));
    assertThat(heard.nextTrouble("message-rejected").text()).contains("it was retained");
    assertThat(heard.nextTrouble("message-duplicate").text())
        .contains("a reading of its time, 2026-04-02T11:59:59Z, with its values was taken");
    assertThat(heard.troubles()).isEmpty();
  }
}
