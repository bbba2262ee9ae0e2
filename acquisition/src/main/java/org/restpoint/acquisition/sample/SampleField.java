package org.restpoint.acquisition.sample;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The fields of a sample's record, in the order in which records have them. */
public enum SampleField {
  /** Its number, by which everything about it is found. */
  NUMBER("number"),
  /** Who grows there. */
  GROWER("grower"),
  /** The farm. */
  FARM("farm"),
  /** The field. */
  FIELD("field"),
  /** The tract. */
  TRACT("tract"),
  /** What it is of. */
  KIND("kind"),
  /** Depth of its upper end below the surface, cm. */
  DEPTH_TOP("depthTopCentimetres"),
  /** Depth of its lower end, cm. */
  DEPTH_BOTTOM("depthBottomCentimetres"),
  /** When it was taken. */
  TAKEN("taken"),
  /** Who took it. */
  TAKEN_BY("takenBy"),
  /** Degrees north, WGS 84. */
  LATITUDE("latitude"),
  /** Degrees east, WGS 84. */
  LONGITUDE("longitude"),
  /** Whether it was kept cool. */
  COOLED("cooled"),
  /** The temperature it was kept at, °C. */
  KEPT_CELSIUS("keptCelsius"),
  /** Whether its container was rinsed with it. */
  CONTAINER_RINSED("containerRinsed"),
  /** Water in it, % of the oven-dry mass; peat holds several times its own mass. */
  MOISTURE("moisturePercent"),
  /** The recipe it is prepared by. */
  RECIPE("recipe"),
  /** Anything else. */
  NOTES("notes");

  private final String key;

  SampleField(String key) {
    this.key = key;
  }

  /** Its name in records. */
  public String key() {
    return key;
  }

  Form form() {
    return switch (this) {
      case NUMBER, GROWER, FARM, FIELD, TRACT, TAKEN_BY, RECIPE -> new Form.Words(200, false);
      case NOTES -> new Form.Words(2000, true);
      case KIND -> new Form.OneOf(SampleKind.words());
      // A borehole is no deeper than a kilometre.
      case DEPTH_TOP, DEPTH_BOTTOM -> new Form.Range(0, 100_000, "cm");
      case TAKEN -> new Form.Moment();
      case LATITUDE -> new Form.Range(-90, 90, "degrees north, WGS 84");
      case LONGITUDE -> new Form.Range(-180, 180, "degrees east, WGS 84");
      case COOLED, CONTAINER_RINSED -> new Form.YesOrNo();
      case KEPT_CELSIUS -> new Form.Range(-50, 60, "Cel");
      case MOISTURE -> new Form.Range(0, 1000, "% of the oven-dry mass");
    };
  }

  /** The names of all fields. */
  public static List<String> keys() {
    return Arrays.stream(values()).map(SampleField::key).toList();
  }

  /** Whether the field of this name holds a number. */
  public static boolean isNumber(String key) {
    return of(key).filter(field -> field.form() instanceof Form.Range).isPresent();
  }

  /** The field of this name. */
  public static Optional<SampleField> of(String key) {
    return Arrays.stream(values()).filter(field -> field.key.equals(key)).findFirst();
  }
}
