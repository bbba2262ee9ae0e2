package org.restpoint.acquisition.listen;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.restpoint.acquisition.listen.Payloads.Kind;
import org.restpoint.acquisition.listen.Payloads.Leaf;
import org.restpoint.acquisition.listen.Payloads.Payload;
import org.restpoint.adapters.guess.Field;
import org.restpoint.adapters.guess.FieldGuess;
import org.restpoint.adapters.mqtt.TopicMessage;

/** What came on one topic; the first 100 messages are kept, all are counted. */
final class TopicHeard {

  private static final int MOST_KEPT = 100;

  private final String topic;
  private final List<Payload> payloads = new ArrayList<>();
  private int count;
  private int unread;
  private int retained;
  private Instant first = Instant.EPOCH;
  private Instant last = Instant.EPOCH;

  TopicHeard(String topic) {
    this.topic = topic;
  }

  String topic() {
    return topic;
  }

  void take(TopicMessage message) {
    first = count == 0 ? message.time() : first;
    last = message.time();
    count++;
    retained += message.retained() ? 1 : 0;
    Optional<Payload> payload = Payloads.read(message.payload());
    unread += payload.isEmpty() ? 1 : 0;
    payload.filter(any -> payloads.size() < MOST_KEPT).ifPresent(payloads::add);
  }

  /** How the messages are written; empty where that is not one and the same for most of them. */
  Optional<Kind> kind() {
    return payloads.stream()
        .map(Payload::kind)
        .findFirst()
        .filter(kind -> payloads.stream().allMatch(payload -> payload.kind() == kind))
        .filter(kind -> unread <= payloads.size());
  }

  /** Where the message's own time stands, if it brings one. */
  Optional<TimeGuess> time() {
    return kind().filter(kind -> kind == Kind.JSON).flatMap(kind -> TimeGuess.of(last, latest()));
  }

  private Map<String, Leaf> latest() {
    return payloads.get(payloads.size() - 1).leaves();
  }

  /** Which of its numbers are the potential and the temperature. */
  Optional<FieldGuess> guess() {
    if (kind().isEmpty()) {
      return Optional.empty();
    }
    Optional<String> time = time().map(TimeGuess::pointer);
    Map<String, List<String>> values = new LinkedHashMap<>();
    Map<String, Leaf> leaves = new LinkedHashMap<>();
    for (Payload payload : payloads) {
      payload
          .leaves()
          .forEach(
              (key, leaf) -> {
                if (leaf.isNumber() && !time.equals(Optional.of(key))) {
                  values.computeIfAbsent(key, any -> new ArrayList<>()).add(leaf.text());
                  leaves.put(key, leaf);
                }
              });
    }
    if (kind().equals(Optional.of(Kind.NUMBER))) {
      return bare(values.getOrDefault("", List.of()));
    }
    List<Field> fields = new ArrayList<>();
    leaves.forEach(
        (key, leaf) ->
            fields.add(
                new Field(key, leaf.name(), leaf.unit(), values.getOrDefault(key, List.of()))));
    return FieldGuess.of(fields);
  }

  /** A bare number is what its topic says, and otherwise a potential in mV. */
  private Optional<FieldGuess> bare(List<String> values) {
    return FieldGuess.of(List.of(new Field("", topic, Optional.empty(), values)))
        .filter(guess -> guess.doubts().isEmpty())
        .or(() -> FieldGuess.of(List.of(new Field("", topic, Optional.of("mV"), values))));
  }

  /** What a section says of it but for its topic: topics of the same are of one family. */
  String likeness() {
    return kind() + " " + guess().map(guess -> keys(guess)).orElse("");
  }

  private static String keys(FieldGuess guess) {
    return guess.potential().map(Field::key) + " " + guess.temperature().map(Field::key);
  }

  /** Whether all that came had been kept by the broker. */
  boolean onlyRetained() {
    return retained == count;
  }

  /** How many came and how often: {@code 12 messages, one every 1.0 s}. */
  String rate() {
    String messages = count == 1 ? "1 message" : count + " messages";
    double seconds = Duration.between(first, last).toMillis() / 1000.0;
    return count < 2
        ? messages
        : String.format(Locale.ROOT, "%s, one every %.1f s", messages, seconds / (count - 1));
  }
}
