package org.restpoint.config.file;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.restpoint.config.station.Thermometer;

/** Reads which thermometer's resistance is sent. */
final class ThermometerReader {

  /** The keys of which a thermometer that is a mapping has exactly one. */
  static final List<String> KINDS = List.of("platinum", "beta", "a");

  /** The keys of a thermistor by beta. */
  static final List<String> BETA_KEYS = List.of("beta", "resistance", "at");

  /** The keys of a thermistor by its coefficients. */
  static final List<String> COEFFICIENT_KEYS = List.of("a", "b", "c");

  private static final Map<String, Double> OHMS_AT_ZERO =
      Map.of("pt100", 100.0, "pt500", 500.0, "pt1000", 1000.0);
  private static final List<String> WORDS = List.of("pt100", "pt500", "pt1000");
  private static final String OR_MAPPING = ", or a mapping with platinum, with beta or with a";
  private static final String A_THERMOMETER = String.join(", ", WORDS) + OR_MAPPING;
  private static final Allowed RESISTANCE = Allowed.above(Measure.RESISTANCE, "0 Ohm", "10 MOhm");
  private static final Allowed BETA = Allowed.from(Measure.BETA, "500 K", "10000 K");

  private ThermometerReader() {}

  static Optional<Thermometer> read(Entry entry) {
    if (entry.isMapping()) {
      return entry.section(A_THERMOMETER).flatMap(ThermometerReader::mapping);
    }
    if (entry.quietText().isEmpty()) {
      entry.refuse(A_THERMOMETER);
      return Optional.empty();
    }
    return entry
        .word(WORDS, OR_MAPPING)
        .map(word -> new Thermometer.Platinum(OHMS_AT_ZERO.getOrDefault(word, 0.0)));
  }

  private static Optional<Thermometer> mapping(Section keys) {
    if (keys.has("platinum")) {
      keys.only(List.of("platinum"));
      return keys.find("platinum").flatMap(RESISTANCE::number).map(Thermometer.Platinum::new);
    }
    if (keys.has("beta")) {
      keys.only(BETA_KEYS);
      Optional<Double> beta = keys.find("beta").flatMap(BETA::number);
      Optional<Double> ohms =
          keys.need("resistance", "its resistance at the reference, e.g. 10 kOhm")
              .flatMap(RESISTANCE::number);
      Optional<Double> at =
          keys.need("at", "the reference, e.g. 25 Cel").flatMap(Allowed.WATER::number);
      return beta.flatMap(
          b -> ohms.flatMap(r -> at.map(celsius -> new Thermometer.Beta(r, celsius, b))));
    }
    keys.only(COEFFICIENT_KEYS);
    if (!keys.has("a")) {
      keys.kind(KINDS);
      return Optional.empty();
    }
    Optional<Double> a = coefficient(keys, "a");
    Optional<Double> b = coefficient(keys, "b");
    Optional<Double> c = coefficient(keys, "c");
    return a.flatMap(
        first ->
            b.flatMap(
                second -> c.map(third -> new Thermometer.SteinhartHart(first, second, third))));
  }

  private static Optional<Double> coefficient(Section keys, String key) {
    return keys.need(key, PlainNumber.STEINHART_HART.expected())
        .flatMap(PlainNumber.STEINHART_HART::read);
  }
}
