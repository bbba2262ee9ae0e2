package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.station.Recipe.Dryness;
import org.restpoint.config.station.Recipe.Portion;

/** Reads how much soil is taken: level scoops, or a mass. */
final class SoilPortionReader {

  /** The keys of level scoops. */
  static final List<String> SCOOP_KEYS =
      List.of(
          "scoops", "scoop", "within", "density", "density-uncertainty", "density-from", "basis");

  /** The keys of a mass. */
  static final List<String> MASS_KEYS = List.of("mass", "within", "basis");

  /** What it looks like. */
  static final String A_PORTION =
      "a mapping with scoops or mass, e.g. { mass: 10 g, within: 0.05 g, basis: air-dry }";

  private static final List<String> KINDS = List.of("scoops", "mass");
  private static final List<String> ONLY_SCOOPS =
      SCOOP_KEYS.stream().filter(key -> !MASS_KEYS.contains(key)).toList();
  private static final List<String> BASES = List.of("air-dry", "as-received");
  private static final int MOST_SCOOPS = 100;
  private static final String DENSITY_FROM = "where the density comes from";

  private SoilPortionReader() {}

  static Optional<Portion> read(Entry entry) {
    return entry.section(A_PORTION).flatMap(SoilPortionReader::read);
  }

  private static Optional<Portion> read(Section keys) {
    Optional<String> kind = tellKeys(keys);
    Optional<Dryness> dryness =
        keys.need("basis", "one of " + String.join(", ", BASES))
            .flatMap(value -> value.word(BASES))
            .map(word -> word.equals("air-dry") ? Dryness.AIR_DRY : Dryness.AS_RECEIVED);
    return switch (kind.orElse("")) {
      case "scoops" -> scoops(keys, dryness);
      case "mass" ->
          Toleranced.MASS
              .need(keys, "mass", "within")
              .flatMap(m -> dryness.map(dry -> new Portion.Weighed(m.value(), m.within(), dry)));
      default -> Optional.empty();
    };
  }

  private static Optional<String> tellKeys(Section keys) {
    if (keys.has("mass") && !keys.has("scoops")) {
      keys.only(MASS_KEYS, ONLY_SCOOPS, "it goes only with scoops");
    } else if (keys.has("scoops") && !keys.has("mass")) {
      keys.only(SCOOP_KEYS);
    } else {
      keys.only(Stream.concat(SCOOP_KEYS.stream(), Stream.of("mass")).toList());
    }
    return keys.kind(KINDS);
  }

  private static Optional<Portion> scoops(Section keys, Optional<Dryness> dryness) {
    Optional<Long> count = keys.find("scoops").flatMap(value -> value.whole(1, MOST_SCOOPS));
    Optional<Toleranced.Read> scoop = Toleranced.VOLUME.need(keys, "scoop", "within");
    Optional<Toleranced.Read> density =
        Toleranced.DENSITY.need(keys, "density", "density-uncertainty");
    Optional<String> from =
        keys.need("density-from", DENSITY_FROM).flatMap(value -> value.freeText(DENSITY_FROM));
    if (from.filter(String::isBlank).isPresent()) {
      keys.find("density-from").ifPresent(at -> at.refuse(DENSITY_FROM));
      return Optional.empty();
    }
    if (count.isEmpty()
        || scoop.isEmpty()
        || density.isEmpty()
        || from.isEmpty()
        || dryness.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Portion.Scoops(
            Math.toIntExact(count.get()),
            scoop.get().volume(),
            density.get().value(),
            density.get().within(),
            from.get(),
            dryness.get()));
  }
}
