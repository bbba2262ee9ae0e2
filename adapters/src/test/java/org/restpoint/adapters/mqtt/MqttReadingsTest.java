package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.broker.Mosquitto;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.stability.reading.Reading;

/** Readings over a real broker, the good and the bad ones. */
@Timeout(60)
class MqttReadingsTest {

  private static final Instant NOON = Instant.parse("2026-04-02T12:00:00.123456Z");
  private static final Instant NOON_MILLIS = Instant.parse("2026-04-02T12:00:00.123Z");
  private static final MqttReadingFormat FIELDS = Formats.json(Formats.both("/mv", "/t"));
  private static final Duration LONG = Duration.ofMinutes(10);

  private final CollectingListener heard = new CollectingListener();

  @TempDir private Path folder;

  private static MqttReadings readings(URI broker) {
    return new MqttReadings(
        BrokerAddress.anonymous(broker),
        "restpoint-bench-readings",
        OutboxPublisherTest.quick(),
        InstantSource.fixed(NOON),
        System::nanoTime);
  }

  /** Starts a link and waits until the broker has taken its subscription. */
  private static void listen(MqttLink link) {
    link.start();
    while (link.check().condition() != Condition.READING) {
      Thread.onSpinWait();
    }
  }

  @Test
  void aMessageBecomesAReadingStampedToTheMillisecond() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber device = Subscriber.connect(broker.url(), "device");
        MqttReadings readings = readings(broker.url());
        MqttLink link = readings.link(MqttLinkSettings.of("bench/no3-a", FIELDS, LONG), heard)) {
      assertThat(link.check().condition()).isEqualTo(Condition.NEW);
      listen(link);
      device.publish("bench/no3-a", "{\"mv\": 187.4, \"t\": 21.5}", 1, false);
      assertThat(heard.nextReading()).isEqualTo(Reading.of(NOON_MILLIS, 187.4, 21.5));
      assertThat(link.check())
          .isEqualTo(new LinkHealth(Condition.READING, "", Optional.of(NOON_MILLIS)));
    }
  }

  @Test
  void linksOfOneStationShareAConnectionAndATopic() {
    CollectingListener other = new CollectingListener();
    MqttReadingFormat first = Formats.json(Formats.millivolts("/a"));
    MqttReadingFormat second = Formats.json(Formats.millivolts("/b"));
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber device = Subscriber.connect(broker.url(), "device");
        MqttReadings readings = readings(broker.url());
        MqttLink one = readings.link(MqttLinkSettings.of("rack", first, LONG), heard)) {
      MqttLink two = readings.link(MqttLinkSettings.of("rack", second, LONG), other);
      listen(one);
      listen(two);
      device.publish("rack", "{\"a\": 1, \"b\": 2}", 1, false);
      assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOON_MILLIS, 1));
      assertThat(other.nextReading()).isEqualTo(Reading.ofMillivolts(NOON_MILLIS, 2));
      two.close();
      device.publish("rack", "{\"a\": 3, \"b\": 4}", 1, false);
      assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOON_MILLIS, 3));
      assertThat(two.counts()).isEqualTo(new LinkCounts(1, 1, 0, 0));
      assertThat(two.check().condition()).isEqualTo(Condition.CLOSED);
      assertThat(broker.logText()).containsOnlyOnce("as restpoint-bench-readings");
    }
  }

  @Test
  void aRetainedMessageIsRejectedBecauseItsAgeIsUnknown() throws InterruptedException {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber device = Subscriber.connect(broker.url(), "device");
        MqttReadings readings = readings(broker.url());
        MqttLink link =
            readings.link(
                MqttLinkSettings.of("bench/no3-a", new MqttReadingFormat.BareNumber(), LONG),
                heard)) {
      device.publish("bench/no3-a", "187.4", 1, true);
      listen(link);
      assertThat(heard.nextTrouble("message-rejected").text())
          .isEqualTo(
              "message on bench/no3-a rejected: it was retained by the broker, so its age is"
                  + " unknown (let the device send unretained); it begins: 187.4");
      device.publish("bench/no3-a", "188.0", 1, false);
      assertThat(heard.nextReading().millivolts()).hasValue(188.0);
      Eventually.become("counted", () -> link.counts().equals(new LinkCounts(2, 1, 1, 0)));
    }
  }

  @Test
  void rejectedMessagesAreAllCountedAndToldOnceAMinute() throws InterruptedException {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber device = Subscriber.connect(broker.url(), "device");
        MqttReadings readings = readings(broker.url());
        MqttLink link = readings.link(MqttLinkSettings.of("bench/no3-a", FIELDS, LONG), heard)) {
      listen(link);
      device.publish("bench/no3-a", "{\"mv\": \"12\"}", 1, false);
      device.publish("bench/no3-a", "garbage", 1, false);
      device.publish("bench/no3-a", "x".repeat(4_097), 1, false);
      device.publish("bench/no3-a", "{\"mv\": 1}", 1, false);
      assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOON_MILLIS, 1));
      Eventually.become("counted", () -> link.counts().equals(new LinkCounts(4, 1, 3, 0)));
      assertThat(heard.nextTrouble().text())
          .isEqualTo(
              "message on bench/no3-a rejected: expected a number at /mv, found a string;"
                  + " it begins: {\"mv\": \"12\"}");
      assertThat(heard.troubles()).isEmpty();
    }
  }

  @Test
  void aReadingThatFindsTheHandOverFullIsCountedAsDropped() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber device = Subscriber.connect(broker.url(), "device");
        MqttReadings readings = readings(broker.url());
        MqttLink link = readings.link(MqttLinkSettings.of("bench/no3-a", FIELDS, LONG), heard)) {
      listen(link);
      heard.full(true);
      device.publish("bench/no3-a", "{\"mv\": 1}", 1, false);
      assertThat(heard.nextTrouble())
          .isEqualTo(
              new LinkTrouble(
                  "hand-over-full",
                  "a reading of topic bench/no3-a was dropped: the hand-over is full",
                  "Look in the log for what holds the service up, or let the device send less"
                      + " often"));
      assertThat(link.counts()).isEqualTo(new LinkCounts(1, 0, 0, 1));
    }
  }

  @Test
  void silenceIsToldAndSoIsItsEnd() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber device = Subscriber.connect(broker.url(), "device");
        MqttReadings readings = readings(broker.url());
        MqttLink link =
            readings.link(
                MqttLinkSettings.of("bench/no3-a", FIELDS, Duration.ofSeconds(1)), heard)) {
      link.start();
      assertThat(heard.nextTrouble("no-data").text())
          .isEqualTo("nothing has come on bench/no3-a for 1 s");
      assertThat(link.check().condition()).isEqualTo(Condition.SILENT);
      device.publish("bench/no3-a", "{\"mv\": 1}", 1, false);
      heard.nextTrouble("data-back");
      assertThat(heard.nextReading().millivolts()).hasValue(1);
    }
  }

  @Test
  void aLinkTellsThatTheBrokerIsAwayAndThatItIsBack() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        MqttReadings readings = readings(broker.url());
        MqttLink link = readings.link(MqttLinkSettings.of("bench/no3-a", FIELDS, LONG), heard)) {
      listen(link);
      broker.stop();
      heard.nextTrouble("broker-refused");
      assertThat(link.check().condition()).isEqualTo(Condition.LOST);
      assertThat(link.check().detail())
          .isEqualTo(
              "broker %s refused the connection: nothing listens there. Start the broker, or set"
                      .formatted(broker.url())
                  + " broker: embedded.");
      broker.start();
      heard.nextTrouble("broker-back");
      try (Subscriber device = Subscriber.connect(broker.url(), "device")) {
        device.publish("bench/no3-a", "{\"mv\": 1}", 1, false);
        assertThat(heard.nextReading().millivolts()).hasValue(1);
      }
    }
  }

  @Test
  void aSubscriptionThatTheBrokerRefusesIsTold() {
    try (DenyingBroker broker = new DenyingBroker();
        MqttReadings readings = readings(broker.url());
        MqttLink link = readings.link(MqttLinkSettings.of("secret", FIELDS, LONG), heard)) {
      link.start();
      assertThat(heard.nextTrouble().text())
          .isEqualTo("broker %s refuses the subscription to secret".formatted(broker.url()));
    }
  }
}
