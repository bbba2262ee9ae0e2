package org.restpoint.config.file;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.restpoint.config.station.MqttPayload;
import org.restpoint.config.station.MqttPayload.Places;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.PotentialNumber;
import org.restpoint.config.station.TemperatureNumber;

/** Reads how the messages of a topic are read. */
final class MqttPayloadReader {

  private static final String NUMBER = "number";
  private static final String SENML = "senml";
  private static final String A_POINTER = "a JSON pointer (RFC 6901), e.g. /millivolts";
  private static final String A_NAME =
      "the full name of a SenML record (RFC 8428), e.g. node-7:ise";
  private static final Pattern BAD_ESCAPE = Pattern.compile("~(?![01])");

  /** RFC 8428, section 4.5.1. */
  private static final Pattern SENML_NAME = Pattern.compile("[A-Za-z0-9][-A-Za-z0-9:./_]{0,254}");

  private final Section keys;
  private final boolean thermometer;
  private final MqttTimeReader times;
  private final List<String> names;

  MqttPayloadReader(Section keys, boolean thermometer, MqttTimeReader times) {
    this.keys = keys;
    this.thermometer = thermometer;
    this.times = times;
    this.names = NumbersReader.NAMES.stream().filter(keys::has).toList();
  }

  Optional<MqttPayload> read() {
    Optional<Entry> payload = keys.find("payload");
    if (payload.isEmpty()) {
      return json();
    }
    Optional<String> word = payload.get().word(List.of(NUMBER, SENML));
    if (word.isEmpty()) {
      return Optional.empty();
    }
    return word.get().equals(SENML) ? senml() : bareNumber(payload.get());
  }

  private Optional<MqttPayload> bareNumber(Entry payload) {
    if (thermometer) {
      payload.refuse(
          "celsius alone for a thermometer",
          "payload",
          "celsius: \"\" reads a message that is nothing but the number");
      return Optional.empty();
    }
    for (String name : names) {
      keys.find(name)
          .ifPresent(
              entry ->
                  entry.refuse(
                      "no " + name + " beside payload: number, a bare number in mV",
                      entry.found(),
                      "without payload, " + name + " is a JSON pointer"));
    }
    for (String key : NumbersReader.KEYS) {
      keys.find(key)
          .ifPresent(entry -> entry.refuse("no " + key + " beside payload: number", entry.found()));
    }
    times.refuse(
        MqttTimeReader.KEYS,
        "only with messages that carry one",
        "payload: number, which has none");
    return Optional.of(new MqttPayload.BareNumber());
  }

  private Optional<MqttPayload> json() {
    if (names.isEmpty() && !thermometer) {
      if (!isMisspelled() && !keys.meant("payload")) {
        keys.self()
            .refuse(
                "payload: number, or a pointer as " + Wording.row(NumbersReader.POTENTIALS, "or"),
                "none of them");
      }
      return Optional.empty();
    }
    Optional<MqttPayload.Time> time = times.read();
    return places(MqttPayloadReader::pointer).map(places -> new MqttPayload.Json(places, time));
  }

  private Optional<MqttPayload> senml() {
    times.refuse(
        List.of("time", "time-unit"),
        "only with JSON pointers",
        "payload: senml, whose records have times");
    Optional<Places> places = places(MqttPayloadReader::name);
    if (places.isPresent() && places.get().potential().equals(places.get().temperature())) {
      places
          .get()
          .numbers()
          .temperature()
          .flatMap(temperature -> keys.find(temperature.key()))
          .ifPresent(entry -> entry.refuse("another record than that of the potential"));
      return Optional.empty();
    }
    return places.map(MqttPayload.SenMl::new);
  }

  private Optional<Places> places(Function<Entry, Optional<String>> read) {
    if (isMisspelled()) {
      return Optional.empty();
    }
    Map<String, String> where = new HashMap<>();
    for (String name : names) {
      keys.find(name).flatMap(read).ifPresent(place -> where.put(name, place));
    }
    Optional<Numbers> numbers =
        new NumbersReader(keys, thermometer).read(names, keys.self(), "key");
    if (numbers.isEmpty() || where.size() < names.size()) {
      return Optional.empty();
    }
    Numbers sent = numbers.get();
    return Optional.of(
        new Places(
            sent,
            sent.potential().map(PotentialNumber::key).map(where::get),
            sent.temperature().map(TemperatureNumber::key).map(where::get)));
  }

  /** Whether the number that the probe needs is missing, and a key was told that meant it. */
  private boolean isMisspelled() {
    List<String> needed = thermometer ? NumbersReader.TEMPERATURES : NumbersReader.POTENTIALS;
    return needed.stream().noneMatch(keys::has) && needed.stream().anyMatch(keys::meant);
  }

  /** A JSON pointer, or empty after one that is none was told. */
  static Optional<String> pointer(Entry entry) {
    Optional<String> text = entry.text(A_POINTER);
    if (text.isEmpty() || isPointer(text.get())) {
      return text;
    }
    entry.refuse(A_POINTER);
    return Optional.empty();
  }

  private static boolean isPointer(String text) {
    return text.isEmpty() || (text.startsWith("/") && !BAD_ESCAPE.matcher(text).find());
  }

  private static Optional<String> name(Entry entry) {
    Optional<String> text = entry.freeText(A_NAME);
    if (text.isEmpty() || SENML_NAME.matcher(text.get()).matches()) {
      return text;
    }
    entry.refuse(A_NAME);
    return Optional.empty();
  }
}
