package org.restpoint.config.file;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.LinkSettings;

/** Reads one probe: an electrode or a thermometer. */
final class ProbeReader {

  /** The keys of an electrode. */
  static final List<String> ELECTRODE_KEYS =
      List.of(
          "analyte",
          "basis",
          "unit",
          "link",
          "temperature",
          "compensation",
          "activity",
          "interferents",
          "settle",
          "calibrate",
          "checks",
          "routine",
          "care",
          "moves",
          "raw");

  /** The keys of a thermometer. */
  static final List<String> THERMOMETER_KEYS = List.of("measures", "link", "raw");

  private static final List<String> KINDS = List.of("analyte", "measures");

  private final String name;
  private final Path folder;
  private final Vocabulary vocabulary;
  private final Standards standards;

  ProbeReader(String name, Path folder, Vocabulary vocabulary, Standards standards) {
    this.name = name;
    this.folder = folder;
    this.vocabulary = vocabulary;
    this.standards = standards;
  }

  ProbeDraft read(Entry entry) {
    Optional<Section> section = entry.section("a mapping with analyte and link");
    if (section.isEmpty()) {
      return new ProbeDraft(
          name,
          Optional.empty(),
          false,
          Optional.empty(),
          false,
          Optional.empty(),
          Optional.empty());
    }
    Section keys = section.get();
    tellKeys(keys, keys.has("measures") && !keys.has("analyte"));
    boolean thermometer = !keys.has("analyte") && (keys.has("measures") || keys.meant("measures"));
    Optional<String> kind = keys.kind(KINDS);
    Optional<LinkSettings> link =
        keys.need("link", LinkReader.A_LINK)
            .flatMap(value -> new LinkReader(folder, thermometer).read(value));
    boolean raw = keys.find("raw").flatMap(Entry::flag).orElse(false);
    keys.find("link").ifPresent(e -> ThermometerCheck.tell(vocabulary, e, link));
    Optional<PortUse> port = keys.find("link").flatMap(e -> PortUse.of(name, e, link));
    if (thermometer) {
      keys.find("measures").ifPresent(value -> value.word(List.of("temperature")));
      return new ProbeDraft(name, link, true, Optional.empty(), raw, port, Optional.empty());
    }
    Optional<Electrode> electrode =
        new ElectrodeReader(name, vocabulary, standards).read(keys, link);
    return new ProbeDraft(
        name,
        link,
        kind.isPresent() && electrode.isPresent(),
        electrode,
        raw,
        port,
        keys.find("temperature").flatMap(e -> e.inside("probe")));
  }

  private static void tellKeys(Section keys, boolean thermometer) {
    if (!thermometer) {
      keys.only(
          keys.has("measures") || !keys.has("analyte")
              ? concat(ELECTRODE_KEYS, "measures")
              : ELECTRODE_KEYS);
      return;
    }
    List<String> foreign =
        ELECTRODE_KEYS.stream().filter(key -> !THERMOMETER_KEYS.contains(key)).toList();
    keys.only(THERMOMETER_KEYS, foreign, "a thermometer only serves other probes: leave it out");
  }

  private static List<String> concat(List<String> words, String last) {
    return Stream.concat(words.stream(), Stream.of(last)).toList();
  }
}
