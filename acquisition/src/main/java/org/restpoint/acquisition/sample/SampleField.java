package org.restpoint.acquisition.sample;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The fields of a sample's record, in the order in which records have them. */
public enum SampleField {
  /** Its number, by which everything about it is found. */
  NUMBER("number", words(200)),
  /** Who grows there. */
  GROWER("grower", words(200)),
  /** The farm. */
  FARM("farm", words(200)),
  /** The field. */
  FIELD("field", words(200)),
  /** The tract. */
  TRACT("tract", words(200)),
  /** What it is of. */
  KIND("kind", new Form.OneOf(SampleKind.words())),
  /** Depth of its upper end below the surface, cm. */
  DEPTH_TOP("depthTopCentimetres", depth()),
  /** Depth of its lower end, cm. */
  DEPTH_BOTTOM("depthBottomCentimetres", depth()),
  /** When it was taken. */
  TAKEN("taken", new Form.Moment()),
  /** Who took it. */
  TAKEN_BY("takenBy", words(200)),
  /** Degrees north, WGS 84. */
  LATITUDE("latitude", new Form.Range(-90, 90, "degrees north, WGS 84")),
  /** Degrees east, WGS 84. */
  LONGITUDE("longitude", new Form.Range(-180, 180, "degrees east, WGS 84")),
  /** Whether it was kept cool. */
  COOLED("cooled", new Form.YesOrNo()),
  /** The temperature it was kept at, °C. */
  KEPT_CELSIUS("keptCelsius", new Form.Range(-50, 60, "Cel")),
  /** Whether its container was rinsed with it. */
  CONTAINER_RINSED("containerRinsed", new Form.YesOrNo()),
  /** Water in it, % of the oven-dry mass; peat holds several times its own mass. */
  MOISTURE("moisturePercent", new Form.Range(0, 1000, "% of the oven-dry mass")),
  /** The recipe it is prepared by. */
  RECIPE("recipe", words(200)),
  /** Anything else. */
  NOTES("notes", new Form.Words(2000, true));

  private final String key;
  private final Form form;

  SampleField(String key, Form form) {
    this.key = key;
    this.form = form;
  }

  private static Form words(int most) {
    return new Form.Words(most, false);
  }

  /** A borehole is no deeper than a kilometre. */
  private static Form depth() {
    return new Form.Range(0, 100_000, "cm");
  }

  /** Its name in records. */
  public String key() {
    return key;
  }

  Form form() {
    return form;
  }

  /** The names of all fields. */
  public static List<String> keys() {
    return Arrays.stream(values()).map(SampleField::key).toList();
  }

  /** Whether the field of this name holds a number. */
  public static boolean isNumber(String key) {
    return of(key).filter(field -> field.form instanceof Form.Range).isPresent();
  }

  static Optional<SampleField> of(String key) {
    return Arrays.stream(values()).filter(field -> field.key.equals(key)).findFirst();
  }
}
