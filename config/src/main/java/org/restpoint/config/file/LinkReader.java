package org.restpoint.config.file;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.LinkSettings.Simulated;

/** Reads how a probe's readings come in. */
final class LinkReader {

  /** The kinds of link. */
  static final List<String> KINDS =
      List.of("serial", "modbus", "sdi12", "mqtt", "recording", "simulated");

  /** The keys of a recording. */
  static final List<String> RECORDING_KEYS = List.of("file");

  /** The keys of a simulated electrode. */
  static final List<String> SIMULATED_KEYS =
      List.of(
          "solution",
          "temperature",
          "slope",
          "offset",
          "time-constant",
          "noise",
          "creep",
          "interval",
          "seed");

  static final String A_LINK = "a mapping with one of " + String.join(", ", KINDS);

  private static final Allowed SLOPE = Allowed.from(Measure.SHARE, "1 %", "200 %");
  private static final Allowed OFFSET = Allowed.from(Measure.POTENTIAL, "-2000 mV", "2000 mV");
  private static final Allowed NOISE = Allowed.from(Measure.POTENTIAL, "0 mV", "100 mV");
  private static final Allowed CREEP = Allowed.from(Measure.DRIFT, "-100 mV/h", "100 mV/h");
  private static final Allowed TIME_CONSTANT = Allowed.from(Measure.TIME, "1 ms", "1 d");
  private static final Allowed INTERVAL = Allowed.from(Measure.TIME, "1 ms", "1 d");

  private static final long MOST_SEED = 1_000_000_000_000L;

  private final Path folder;
  private final boolean thermometer;

  /**
   * A reader for one probe.
   *
   * @param thermometer whether the probe is a thermometer rather than an electrode
   */
  LinkReader(Path folder, boolean thermometer) {
    this.folder = folder;
    this.thermometer = thermometer;
  }

  Optional<LinkSettings> read(Entry entry) {
    Optional<Section> section = entry.section(A_LINK);
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section keys = section.get();
    keys.only(KINDS);
    Optional<String> kind = keys.kind(KINDS);
    Optional<LinkSettings> link = Optional.empty();
    for (String key : KINDS) {
      Optional<LinkSettings> read = keys.find(key).flatMap(value -> read(key, value));
      link = link.or(() -> read);
    }
    Optional<LinkSettings> only = link;
    return kind.flatMap(any -> only);
  }

  private Optional<LinkSettings> read(String kind, Entry entry) {
    Optional<Section> section = entry.section("a mapping with the keys of " + kind);
    return switch (kind) {
      case "serial" -> section.flatMap(keys -> new SerialReader(keys, thermometer).read());
      case "modbus" -> section.flatMap(keys -> new ModbusReader(keys, thermometer).read());
      case "sdi12" -> section.flatMap(keys -> new Sdi12Reader(keys, thermometer).read());
      case "mqtt" -> section.flatMap(keys -> MqttReader.read(keys, thermometer));
      case "recording" -> section.flatMap(this::recording);
      default -> section.flatMap(this::simulated);
    };
  }

  private Optional<LinkSettings> recording(Section keys) {
    keys.only(RECORDING_KEYS);
    return keys.need("file", "the path of a recording")
        .flatMap(value -> StationReader.path(value, folder))
        .map(LinkSettings.Recording::new);
  }

  private Optional<LinkSettings> simulated(Section keys) {
    keys.only(SIMULATED_KEYS);
    if (thermometer) {
      keys.self()
          .refuse(
              "serial, modbus, sdi12, mqtt or recording for a thermometer",
              "a simulated electrode");
    }
    double celsius = keys.find("temperature").flatMap(Allowed.WATER::number).orElse(25.0);
    double slope = keys.find("slope").flatMap(SLOPE::number).orElse(98.0);
    double offset = keys.find("offset").flatMap(OFFSET::number).orElse(0.0);
    double noise = keys.find("noise").flatMap(NOISE::number).orElse(0.05);
    double creep = keys.find("creep").flatMap(CREEP::number).orElse(0.0);
    Duration timeConstant =
        keys.find("time-constant").flatMap(TIME_CONSTANT::span).orElse(Duration.ofSeconds(8));
    Duration interval = keys.find("interval").flatMap(INTERVAL::span).orElse(Duration.ofSeconds(1));
    long seed = keys.find("seed").flatMap(value -> value.whole(-MOST_SEED, MOST_SEED)).orElse(1L);
    return keys.need("solution", "what it sits in: " + Measure.CONCENTRATION.expected())
        .flatMap(Concentrations::read)
        .map(Concentrations::quantity)
        .map(
            solution ->
                new Simulated(
                    solution, celsius, slope, offset, timeConstant, noise, creep, interval, seed));
  }
}
