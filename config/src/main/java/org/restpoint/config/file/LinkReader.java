package org.restpoint.config.file;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.LinkSettings;

/** Reads how a probe's readings come in. */
final class LinkReader {

  /** The kinds of link. */
  static final List<String> KINDS =
      List.of("serial", "modbus", "sdi12", "mqtt", "recording", "simulated");

  static final String A_LINK = "a mapping with one of " + String.join(", ", KINDS);

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
      case "mqtt" -> section.flatMap(keys -> new MqttReader(keys, thermometer).read());
      case "recording" ->
          section.flatMap(keys -> new RecordingKeys(keys, folder, thermometer).read());
      default -> section.flatMap(keys -> SimulatedReader.read(keys, thermometer));
    };
  }
}
