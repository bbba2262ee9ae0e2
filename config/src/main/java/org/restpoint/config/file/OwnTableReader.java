package org.restpoint.config.file;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.TableSettings;
import org.restpoint.config.station.TableSettings.Band;
import org.restpoint.config.station.TableSettings.Layer;

/** Reads a guidance table that the file writes out. */
final class OwnTableReader {

  /** The keys of it. */
  static final List<String> KEYS =
      List.of(
          "title",
          "source",
          "region",
          "season",
          "depth",
          "valid-until",
          "of",
          "for",
          "analyte",
          "basis",
          "bands");

  static final String A_LIST =
      "a list of bands upwards, e.g. [{ below: 10 mg/L, says: low }, { says: high }]";

  private static final String DRY_SOIL = "dry soil";
  private static final List<String> OF = List.of(DRY_SOIL, "water");
  private static final String USUAL_ANALYTE = "nitrate";
  private static final String A_DEPTH = "a depth in cm, e.g. 0..30 cm";

  /** No auger for soil samples goes deeper. */
  private static final double DEEPEST_CENTIMETRES = 1000;

  private final Vocabulary vocabulary;

  OwnTableReader(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** Whether the table is of soil; empty where it does not say. Nothing is told. */
  static Optional<Boolean> ofSoil(Section keys) {
    return keys.find("of").flatMap(Entry::quietText).filter(OF::contains).map(DRY_SOIL::equals);
  }

  Optional<TableSettings> read(Section keys) {
    keys.only(KEYS);
    Optional<String> title = need(keys, "title", "what the table is about");
    Optional<String> source = need(keys, "source", "where the table was published");
    Optional<String> region = need(keys, "region", "where the table holds");
    Optional<String> season = need(keys, "season", "when in the year the table holds");
    Optional<Boolean> soil =
        keys.need("of", "what its numbers are of: " + String.join(" or ", OF))
            .flatMap(entry -> entry.word(OF))
            .map(DRY_SOIL::equals);
    Optional<Layer> layer = layer(keys, soil);
    Optional<LocalDate> until = keys.find("valid-until").flatMap(StandardReader::date);
    Optional<String> analyte = analyte(keys);
    Optional<String> basis = new BasisReader(vocabulary).read(keys, analyte, true);
    Measurand measurand = new Measurand(analyte, vocabulary);
    List<Band> bands =
        keys.need("bands", A_LIST)
            .map(entry -> new BandsReader(soil, measurand).read(entry))
            .orElse(List.of());
    boolean whole =
        title.isPresent()
            && source.isPresent()
            && region.isPresent()
            && season.isPresent()
            && soil.isPresent()
            && soil.get() == layer.isPresent()
            && analyte.isPresent()
            && !bands.isEmpty();
    return whole
        ? Optional.of(
            new TableSettings.Own(
                title.get(),
                source.get(),
                region.get(),
                season.get(),
                layer,
                until,
                analyte.get(),
                basis,
                bands))
        : Optional.empty();
  }

  private Optional<String> analyte(Section keys) {
    return keys.has("analyte")
        ? keys.find("analyte").flatMap(entry -> entry.word(vocabulary.analytes()))
        : Optional.of(USUAL_ANALYTE);
  }

  private static Optional<Layer> layer(Section keys, Optional<Boolean> soil) {
    if (soil.isPresent() && !soil.get()) {
      keys.find("depth")
          .ifPresent(
              e -> e.refuse("no depth, as the table is of water", e.found(), "leave it out"));
      return Optional.empty();
    }
    Optional<Entry> at = soil.isPresent() ? keys.need("depth", A_DEPTH) : keys.find("depth");
    return at.flatMap(OwnTableReader::layer);
  }

  private static Optional<Layer> layer(Entry entry) {
    Optional<RangeText> range = RangeText.read(entry, A_DEPTH);
    if (range.isPresent() && !range.get().unit().equals("cm")) {
      entry.refuse(A_DEPTH);
      return Optional.empty();
    }
    boolean sound =
        range
            .filter(depth -> depth.low() < depth.high() && depth.high() <= DEEPEST_CENTIMETRES)
            .isPresent();
    if (range.isPresent() && !sound) {
      entry.refuse("a depth within 0..1000 cm, the upper edge first");
    }
    return sound ? range.map(depth -> new Layer(depth.low(), depth.high())) : Optional.empty();
  }

  private static Optional<String> need(Section keys, String key, String expected) {
    return keys.need(key, expected).flatMap(entry -> text(entry, expected));
  }

  /** Text that says something. */
  static Optional<String> text(Entry entry, String expected) {
    Optional<String> text = entry.freeText(expected);
    if (text.isPresent() && text.get().isBlank()) {
      entry.refuse(expected);
      return Optional.empty();
    }
    return text;
  }
}
