package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.MqttPayload;

/** Reads where a message carries its time. */
final class MqttTimeReader {

  /** The keys of it. */
  static final List<String> KEYS = List.of("time", "time-unit", "time-within", "late-by");

  private final Section keys;

  MqttTimeReader(Section keys) {
    this.keys = keys;
  }

  /** The time of a JSON message; empty where that of its arrival counts. */
  Optional<MqttPayload.Time> read() {
    boolean millis =
        keys.find("time-unit")
            .flatMap(entry -> entry.word(List.of("s", "ms")))
            .filter("ms"::equals)
            .isPresent();
    for (String key : List.of("time-unit", "time-within", "late-by")) {
      if (keys.has(key)) {
        keys.need("time", "where the time stands, as " + key + " is given");
      }
    }
    return keys.find("time")
        .flatMap(MqttPayloadReader::pointer)
        .map(pointer -> new MqttPayload.Time(pointer, millis));
  }

  /** Tells the keys that have no place beside a payload. */
  void refuse(List<String> refused, String expected, String found) {
    for (String key : refused) {
      keys.find(key).ifPresent(entry -> entry.refuse(key + " " + expected, found));
    }
  }
}
