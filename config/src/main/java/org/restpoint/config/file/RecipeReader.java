package org.restpoint.config.file;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.restpoint.config.station.Recipe;
import org.restpoint.config.station.Recipe.Dilution;
import org.restpoint.config.station.Recipe.Moisture;
import org.restpoint.config.station.Recipe.Portion;
import org.restpoint.config.station.Recipe.Vessel;
import org.restpoint.config.station.Recipe.Volume;

/** Reads one recipe: of soil in an extractant, or of water. */
final class RecipeReader {

  /** The keys of a recipe of soil. */
  static final List<String> SOIL_KEYS =
      List.of("soil", "extractant", "moisture", "dilution", "extract", "standard");

  /** The keys of a recipe of water. */
  static final List<String> WATER_KEYS = List.of("water", "dilution", "standard");

  /** The keys of an extractant. */
  static final List<String> EXTRACTANT_KEYS = List.of("volume", "within");

  /** The keys of a moisture. */
  static final List<String> MOISTURE_KEYS = List.of("of-dry", "of-moist", "uncertainty");

  /** The keys of a dilution. */
  static final List<String> DILUTION_KEYS =
      List.of("aliquot", "aliquot-within", "flask", "flask-within");

  private static final List<String> KINDS = List.of("soil", "water");
  private static final List<String> MOISTURES = List.of("of-dry", "of-moist");
  private static final String A_RECIPE = "a mapping with soil and extractant, or with water";
  private static final String AN_EXTRACTANT = "a mapping like { volume: 25 mL, within: 0.3 mL }";
  private static final String A_MOISTURE = "a mapping like { of-dry: 3 %, uncertainty: 1 % }";
  private static final String A_DILUTION =
      "a mapping like { aliquot: 10 mL, aliquot-within: 0.02 mL, flask: 100 mL, flask-within: 0.1 mL }";

  /** Peat holds several times its own dry mass. */
  private static final Allowed OF_DRY = Allowed.from(Measure.SHARE, "0 %", "1000 %");

  /** The same of the moist mass, rounded. */
  private static final Allowed OF_MOIST = Allowed.from(Measure.SHARE, "0 %", "90 %");

  private static final Allowed UNCERTAINTY = Allowed.from(Measure.SHARE, "0 %", "100 %");

  private RecipeReader() {}

  static Optional<Recipe> read(String name, Entry entry) {
    Optional<Section> section = entry.section(A_RECIPE);
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section keys = section.get();
    tellKeys(keys);
    return switch (keys.kind(KINDS).orElse("")) {
      case "soil" -> soil(name, keys);
      case "water" -> water(name, keys);
      default -> Optional.empty();
    };
  }

  private static void tellKeys(Section keys) {
    if (keys.has("water") && !keys.has("soil")) {
      keys.only(WATER_KEYS, foreign());
    } else if (keys.has("water")) {
      keys.only(Stream.concat(SOIL_KEYS.stream(), Stream.of("water")).toList());
    } else {
      keys.only(keys.has("soil") ? SOIL_KEYS : all());
    }
  }

  private static List<String> all() {
    return Stream.concat(Stream.of("soil", "water"), SOIL_KEYS.stream().skip(1)).toList();
  }

  private static Map<String, String> foreign() {
    return SOIL_KEYS.stream()
        .filter(key -> !WATER_KEYS.contains(key) && !key.equals("soil"))
        .collect(Collectors.toMap(key -> key, key -> "it goes only with soil"));
  }

  private static Optional<Recipe> soil(String name, Section keys) {
    Optional<Portion> portion = keys.find("soil").flatMap(SoilPortionReader::read);
    Optional<Volume> extractant =
        keys.need("extractant", AN_EXTRACTANT)
            .flatMap(entry -> entry.section(AN_EXTRACTANT))
            .flatMap(RecipeReader::extractant);
    Optional<Moisture> moisture = keys.find("moisture").flatMap(RecipeReader::moisture);
    Optional<Dilution> dilution = keys.find("dilution").flatMap(RecipeReader::dilution);
    Optional<Vessel> extract =
        keys.has("extract")
            ? keys.find("extract").flatMap(VesselReader::extract)
            : Optional.of(new Vessel.AsItIs(0));
    Optional<Vessel> standard = VesselReader.standard(keys, extract);
    if (portion.isEmpty() || extractant.isEmpty() || extract.isEmpty() || standard.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Recipe.Soil(
            name,
            portion.get(),
            extractant.get(),
            moisture,
            dilution,
            extract.get(),
            standard.get()));
  }

  private static Optional<Recipe> water(String name, Section keys) {
    Optional<Dilution> dilution = keys.find("dilution").flatMap(RecipeReader::dilution);
    Optional<Vessel> sample = keys.find("water").flatMap(VesselReader::water);
    Optional<Vessel> standard = VesselReader.standard(keys, sample);
    return sample.flatMap(in -> standard.map(with -> new Recipe.Water(name, dilution, in, with)));
  }

  private static Optional<Volume> extractant(Section keys) {
    keys.only(EXTRACTANT_KEYS);
    return Toleranced.VOLUME.need(keys, "volume", "within").map(Toleranced.Read::volume);
  }

  private static Optional<Moisture> moisture(Entry entry) {
    Optional<Section> section = entry.section(A_MOISTURE);
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section keys = section.get();
    keys.only(MOISTURE_KEYS);
    Optional<String> kind = keys.kind(MOISTURES);
    Optional<Double> ofDry = keys.find("of-dry").flatMap(OF_DRY::number);
    Optional<Double> ofMoist = keys.find("of-moist").flatMap(OF_MOIST::number);
    Optional<Double> uncertainty =
        keys.need("uncertainty", "a standard uncertainty in %, e.g. 1 %")
            .flatMap(UNCERTAINTY::number);
    return kind.flatMap(
        key ->
            (key.equals("of-dry") ? ofDry : ofMoist)
                .flatMap(
                    percent ->
                        uncertainty.map(
                            u ->
                                new Moisture(
                                    key.equals("of-dry")
                                        ? Moisture.Of.DRY_MASS
                                        : Moisture.Of.MOIST_MASS,
                                    percent,
                                    u))));
  }

  private static Optional<Dilution> dilution(Entry entry) {
    Optional<Section> section = entry.section(A_DILUTION);
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section keys = section.get();
    keys.only(DILUTION_KEYS);
    Optional<Volume> aliquot =
        Toleranced.VOLUME.need(keys, "aliquot", "aliquot-within").map(Toleranced.Read::volume);
    Optional<Volume> flask =
        Toleranced.VOLUME.need(keys, "flask", "flask-within").map(Toleranced.Read::volume);
    if (aliquot.isEmpty() || flask.isEmpty()) {
      return Optional.empty();
    }
    if (flask.get().millilitres() < aliquot.get().millilitres()) {
      keys.find("flask").ifPresent(at -> at.refuse("a flask of no less than the aliquot"));
      return Optional.empty();
    }
    return Optional.of(new Dilution(aliquot.get(), flask.get()));
  }
}
