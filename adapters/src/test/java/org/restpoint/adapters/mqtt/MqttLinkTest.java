package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.text.Excerpt;

/** What a link makes of messages, without a broker. */
class MqttLinkTest {

  private static final Instant NOON = Instant.parse("2026-04-02T12:00:00Z");
  private static final Duration LONG = Duration.ofDays(1);

  private final AtomicLong nanos = new AtomicLong();
  private final CollectingListener heard = new CollectingListener();
  private final MqttReadings readings =
      new MqttReadings(
          BrokerAddress.anonymous(URI.create("tcp://127.0.0.1:1")),
          "readings",
          ConnectionTimes.usual(),
          InstantSource.fixed(NOON),
          nanos::get);

  private MqttLink link(MqttReadingFormat format) {
    return readings.link(MqttLinkSettings.of("bench/no3-a", format, LONG), heard);
  }

  private static void come(MqttLink link, String payload, boolean duplicate) {
    byte[] bytes = payload.getBytes(StandardCharsets.ISO_8859_1);
    link.take(new Arrival(NOON, link.topic(), bytes, false, duplicate, 1, 1));
  }

  @Test
  void tenThousandBadMessagesAreCountedAndToldOnceAMinuteWithAShortSample() {
    MqttLink link = link(new MqttReadingFormat.BareNumber());
    String bad = "\u001b[31m\n\u0000\u00ff" + "x".repeat(4_000);
    for (int i = 0; i < 5_000; i++) {
      come(link, bad, false);
      come(link, "y".repeat(100_000), false);
      nanos.addAndGet(1_000_000);
    }
    assertThat(link.counts()).isEqualTo(new LinkCounts(10_000, 0, 10_000, 0));
    LinkTrouble first = heard.nextTrouble();
    assertThat(first.text())
        .isEqualTo(
            "message on bench/no3-a rejected: expected a number such as 187.4; it begins:"
                + " \\x1B[31m\\x0A\\x00\\xFF"
                + "x".repeat(Excerpt.LONGEST - 23)
                + "...");
    assertThat(heard.troubles()).isEmpty();
    nanos.addAndGet(Duration.ofMinutes(1).toNanos());
    link.watch();
    assertThat(heard.nextTrouble().text())
        .isEqualTo(
            "9999 more messages on bench/no3-a rejected, the latest: it has 100000 bytes, at most"
                + " 4096 are read; it begins: "
                + "y".repeat(77)
                + "...");
    link.watch();
    assertThat(heard.troubles()).isEmpty();
  }

  @Test
  void whatTheBrokerMarksAsSentBeforeIsARepetitionIfItIsTheSame() {
    MqttLink link = link(new MqttReadingFormat.BareNumber());
    come(link, "187.4", false);
    come(link, "187.4", true);
    come(link, "187.5", true);
    come(link, "187.5", false);
    assertThat(link.counts()).isEqualTo(new LinkCounts(4, 3, 1, 0));
    assertThat(heard.nextTrouble())
        .isEqualTo(
            new LinkTrouble(
                "message-duplicate",
                "message on bench/no3-a rejected: the broker marks it as sent before; it begins:"
                    + " 187.4",
                "Nothing is lost; see why the device, or a bridge between brokers, sends it"
                    + " again."));
    assertThat(heard.troubles()).isEmpty();
  }

  @Test
  void duplicatesAreToldApartFromOtherRejections() {
    MqttLink link = link(Formats.json(Formats.millivolts("/mv"), "/ts"));
    String message = "{\"ts\":\"2026-04-02T12:00:00Z\",\"mv\":187.4}";
    come(link, message, false);
    come(link, message, false);
    come(link, message.replace("187.4", "187.5"), false);
    come(link, message, false);
    assertThat(link.counts()).isEqualTo(new LinkCounts(4, 1, 3, 0));
    assertThat(heard.nextTrouble().code()).isEqualTo("message-duplicate");
    LinkTrouble other = heard.nextTrouble();
    assertThat(other.code()).isEqualTo("message-rejected");
    assertThat(other.text()).contains("was taken with other values");
    assertThat(heard.troubles()).isEmpty();
  }

  @Test
  void aPackCountsOnceForEachReadingAndIsToldOnce() {
    MqttLink link = link(Formats.senml(Formats.millivolts("e")));
    String pack = "[{\"bn\":\"e\",\"t\":-2,\"v\":1},{\"t\":-1,\"v\":2},{\"t\":-900,\"v\":3}]";
    come(link, pack, false);
    come(link, pack, false);
    assertThat(link.counts()).isEqualTo(new LinkCounts(6, 2, 4, 0));
    assertThat(heard.nextTrouble("message-rejected").text())
        .startsWith(
            "message on bench/no3-a rejected: 1 of its 3 readings: its time,"
                + " 2026-04-02T11:45:00Z, is 15 min behind the clock, at most 5 min is allowed");
    assertThat(heard.nextTrouble("message-duplicate").text())
        .startsWith("message on bench/no3-a rejected: 2 of its 3 readings: a reading of its time");
  }
}
