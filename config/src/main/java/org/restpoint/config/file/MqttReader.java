package org.restpoint.config.file;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.MqttPayload;
import org.restpoint.config.station.OwnTimes;

/** Reads a link that listens to a topic. */
final class MqttReader {

  /** The keys of a topic's link. */
  static final List<String> KEYS =
      Stream.of(
              List.of("topic", "captured", "payload"),
              NumbersReader.NAMES,
              NumbersReader.KEYS,
              MqttTimeReader.KEYS,
              List.of("no-data-after"))
          .flatMap(List::stream)
          .toList();

  private static final String A_TOPIC =
      "a topic of 1 to 65535 bytes, with at most one whole level + and without #";
  private static final String A_LEVEL = "one level of a topic, e.g. node-7";
  private static final int LONGEST_TOPIC = 65_535;
  private static final Duration USUAL_NO_DATA = Duration.ofMinutes(5);

  private final Section keys;
  private final boolean thermometer;

  /**
   * A reader for one link.
   *
   * @param thermometer whether the probe is a thermometer rather than an electrode
   */
  MqttReader(Section keys, boolean thermometer) {
    this.keys = keys;
    this.thermometer = thermometer;
  }

  Optional<LinkSettings> read() {
    keys.only(KEYS);
    Optional<String> topic = keys.need("topic", A_TOPIC).flatMap(MqttReader::topic);
    Optional<String> captured = keys.find("captured").flatMap(MqttReader::level);
    if (topic.isPresent() && topic.get().indexOf('+') < 0) {
      keys.find("captured")
          .ifPresent(entry -> entry.refuse("captured only where topic has a level +", topic.get()));
    }
    MqttTimeReader times = new MqttTimeReader(keys);
    Optional<MqttPayload> payload = new MqttPayloadReader(keys, thermometer, times).read();
    OwnTimes trusted = OwnTimesReader.read(keys);
    Duration noData = keys.find("no-data-after").flatMap(Allowed.WAIT::span).orElse(USUAL_NO_DATA);
    return topic.flatMap(
        filter ->
            payload.map(read -> new LinkSettings.Mqtt(filter, captured, read, trusted, noData)));
  }

  private static Optional<String> topic(Entry entry) {
    return checked(entry, A_TOPIC, entry.freeText(A_TOPIC).filter(MqttReader::isTopic));
  }

  private static Optional<String> level(Entry entry) {
    Optional<String> level =
        entry
            .freeText(A_LEVEL)
            .filter(text -> isText(text) && text.chars().noneMatch(c -> "/+#".indexOf(c) >= 0));
    return checked(entry, A_LEVEL, level);
  }

  /** Tells a text that did not stand its check; one that is no text was told already. */
  private static Optional<String> checked(Entry entry, String expected, Optional<String> stood) {
    if (stood.isEmpty() && entry.quietText().isPresent()) {
      entry.refuse(expected);
    }
    return stood;
  }

  private static boolean isTopic(String topic) {
    List<String> levels = List.of(topic.split("/", -1));
    return isText(topic)
        && topic.indexOf('#') < 0
        && levels.stream().allMatch(level -> level.equals("+") || level.indexOf('+') < 0)
        && levels.stream().filter("+"::equals).count() <= 1;
  }

  private static boolean isText(String text) {
    return !text.isEmpty()
        && text.indexOf('\0') < 0
        && StandardCharsets.UTF_8.newEncoder().canEncode(text)
        && text.getBytes(StandardCharsets.UTF_8).length <= LONGEST_TOPIC;
  }
}
