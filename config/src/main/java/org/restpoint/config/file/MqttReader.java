package org.restpoint.config.file;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.LinkSettings.MqttPayload;

/** Reads a link that listens to a topic. */
final class MqttReader {

  /** The keys of a topic's link. */
  static final List<String> KEYS =
      List.of("topic", "payload", "millivolts", "celsius", "no-data-after");

  private static final String A_TOPIC = "a topic of 1 to 65535 bytes without + and #";
  private static final String A_POINTER = "a JSON pointer (RFC 6901), e.g. /millivolts";
  private static final Pattern BAD_ESCAPE = Pattern.compile("~(?![01])");
  private static final int LONGEST_TOPIC = 65_535;
  private static final Duration USUAL_NO_DATA = Duration.ofMinutes(5);

  private MqttReader() {}

  static Optional<LinkSettings> read(Section keys, boolean thermometer) {
    keys.only(KEYS);
    Optional<String> topic = keys.need("topic", A_TOPIC).flatMap(MqttReader::topic);
    Optional<MqttPayload> payload = thermometer ? temperature(keys) : potential(keys);
    Duration noData = keys.find("no-data-after").flatMap(Allowed.WAIT::span).orElse(USUAL_NO_DATA);
    if (topic.isEmpty() || payload.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new LinkSettings.Mqtt(topic.get(), payload.get(), noData));
  }

  private static Optional<MqttPayload> potential(Section keys) {
    Optional<String> kind = keys.kind(List.of("payload", "millivolts"));
    keys.find("payload").ifPresent(value -> value.word(List.of("number")));
    Optional<String> millivolts = keys.find("millivolts").flatMap(MqttReader::pointer);
    Optional<String> celsius = keys.find("celsius").flatMap(MqttReader::pointer);
    if (keys.has("payload") && !keys.has("millivolts")) {
      keys.find("celsius")
          .ifPresent(
              value -> value.refuse("celsius only beside millivolts", "it beside payload: number"));
      return Optional.of(new MqttPayload.BareNumber());
    }
    return kind.flatMap(any -> millivolts).map(m -> new MqttPayload.Json(millivolts, celsius));
  }

  private static Optional<MqttPayload> temperature(Section keys) {
    for (String key : List.of("payload", "millivolts")) {
      keys.find(key)
          .ifPresent(
              value ->
                  value.refuse(
                      "celsius alone for a thermometer",
                      key,
                      "celsius: \"\" reads a message that is nothing but the number"));
    }
    if (keys.has("payload") || keys.has("millivolts")) {
      return Optional.empty();
    }
    return keys.need("celsius", "a JSON pointer (RFC 6901), e.g. /celsius")
        .flatMap(MqttReader::pointer)
        .map(celsius -> new MqttPayload.Json(Optional.empty(), Optional.of(celsius)));
  }

  private static Optional<String> pointer(Entry entry) {
    Optional<String> text = entry.text(A_POINTER);
    if (text.isEmpty() || isPointer(text.get())) {
      return text;
    }
    entry.refuse(A_POINTER);
    return Optional.empty();
  }

  private static Optional<String> topic(Entry entry) {
    Optional<String> text = entry.freeText(A_TOPIC);
    if (text.isEmpty() || isTopic(text.get())) {
      return text;
    }
    entry.refuse(A_TOPIC);
    return Optional.empty();
  }

  private static boolean isPointer(String text) {
    return text.isEmpty() || (text.startsWith("/") && !BAD_ESCAPE.matcher(text).find());
  }

  private static boolean isTopic(String topic) {
    return !topic.isEmpty()
        && topic.chars().noneMatch(c -> c == '+' || c == '#' || c == 0)
        && StandardCharsets.UTF_8.newEncoder().canEncode(topic)
        && topic.getBytes(StandardCharsets.UTF_8).length <= LONGEST_TOPIC;
  }
}
