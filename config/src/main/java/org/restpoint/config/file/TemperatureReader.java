package org.restpoint.config.file;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.TemperatureSource;
import org.restpoint.config.station.TemperatureSource.WhenStale;

/** Reads where a solution's temperature comes from. */
final class TemperatureReader {

  /** The keys that say which source it is. */
  static final List<String> KINDS = List.of("from", "fixed", "probe");

  /** The keys beside {@code fixed}. */
  static final List<String> FIXED_KEYS = List.of("fixed", "uncertainty");

  /** The keys beside {@code probe}. */
  static final List<String> PROBE_KEYS = List.of("probe", "stale-after", "when-stale");

  static final String A_SOURCE = "a mapping with from, fixed or probe, e.g. { fixed: 22.0 Cel }";

  private static final Allowed UNCERTAINTY =
      Allowed.from(Measure.TEMPERATURE_DIFFERENCE, "0 K", "20 K");
  private static final double USUAL_UNCERTAINTY_KELVIN = 1;
  private static final Duration USUAL_STALE_AFTER = Duration.ofSeconds(30);

  private TemperatureReader() {}

  /**
   * Reads a source.
   *
   * @param link the probe's link, unless it was refused
   */
  static Optional<TemperatureSource> read(Entry entry, Optional<LinkSettings> link) {
    Optional<Section> section = entry.section(A_SOURCE);
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section keys = section.get();
    if (keys.has("fixed")) {
      keys.only(keys.has("from") || keys.has("probe") ? all() : FIXED_KEYS);
    } else if (keys.has("probe")) {
      keys.only(keys.has("from") ? all() : PROBE_KEYS);
    } else {
      keys.only(keys.has("from") ? List.of("from") : all());
    }
    Optional<String> kind = keys.kind(KINDS);
    Optional<TemperatureSource> from = keys.find("from").flatMap(value -> fromReading(value, link));
    Optional<TemperatureSource> fixed = fixed(keys);
    Optional<TemperatureSource> probe = probe(keys);
    return kind.flatMap(any -> from.or(() -> fixed).or(() -> probe));
  }

  private static List<String> all() {
    return List.of("from", "fixed", "uncertainty", "probe", "stale-after", "when-stale");
  }

  private static Optional<TemperatureSource> fromReading(Entry entry, Optional<LinkSettings> link) {
    Optional<String> word = entry.word(List.of("reading"));
    link.flatMap(CarriedTemperature::lack)
        .ifPresent(
            lack -> entry.refuse("readings that carry a temperature", lack.found(), lack.remedy()));
    return word.map(reading -> new TemperatureSource.FromReading());
  }

  private static Optional<TemperatureSource> fixed(Section keys) {
    Optional<Double> celsius = keys.find("fixed").flatMap(Allowed.WATER::number);
    double uncertainty =
        keys.find("uncertainty").flatMap(UNCERTAINTY::number).orElse(USUAL_UNCERTAINTY_KELVIN);
    return celsius.map(value -> new TemperatureSource.Fixed(value, uncertainty));
  }

  private static Optional<TemperatureSource> probe(Section keys) {
    Optional<String> name = keys.find("probe").flatMap(value -> value.freeText("a probe's name"));
    Duration staleAfter =
        keys.find("stale-after").flatMap(Allowed.WAIT::span).orElse(USUAL_STALE_AFTER);
    WhenStale whenStale =
        keys.find("when-stale")
            .flatMap(value -> value.word(List.of("refuse", "flag")))
            .map(word -> word.equals("flag") ? WhenStale.FLAG : WhenStale.REFUSE)
            .orElse(WhenStale.REFUSE);
    return name.map(value -> new TemperatureSource.FromProbe(value, staleAfter, whenStale));
  }
}
