package org.restpoint.acquisition.sample;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * What is known of a sample. Refuses, with a {@link SampleException}, half a position and depths in
 * the wrong order.
 *
 * @param number its number
 * @param grower who grows there
 * @param farm the farm
 * @param field the field
 * @param tract the tract
 * @param kind what it is of
 * @param depthTopCentimetres depth of its upper end below the surface, cm
 * @param depthBottomCentimetres depth of its lower end, cm, no less than that of its upper end
 * @param taken when it was taken, with the offset from UTC of the place
 * @param takenBy who took it
 * @param latitude degrees north, WGS 84, from −90 to 90; with a longitude or not at all
 * @param longitude degrees east, WGS 84, from −180 to 180
 * @param cooled whether it was kept cool
 * @param keptCelsius the temperature it was kept at, °C
 * @param containerRinsed whether its container was rinsed with it
 * @param moisturePercent water in it, % of the oven-dry mass
 * @param recipe the recipe it is prepared by
 * @param notes anything else
 */
public record Sample(
    String number,
    Optional<String> grower,
    Optional<String> farm,
    Optional<String> field,
    Optional<String> tract,
    Optional<SampleKind> kind,
    OptionalDouble depthTopCentimetres,
    OptionalDouble depthBottomCentimetres,
    Optional<OffsetDateTime> taken,
    Optional<String> takenBy,
    OptionalDouble latitude,
    OptionalDouble longitude,
    Optional<Boolean> cooled,
    OptionalDouble keptCelsius,
    Optional<Boolean> containerRinsed,
    OptionalDouble moisturePercent,
    Optional<String> recipe,
    Optional<String> notes) {

  /** Clocks of the field and of the bench differ by minutes. */
  private static final Duration CLOCKS_DIFFER = Duration.ofMinutes(5);

  /** An earlier time counts from the zero of a recording, or from that of a board without clock. */
  private static final Instant FIRST_DATE = Instant.parse("2000-01-01T00:00:00Z");

  public Sample {
    List<String> problems = new ArrayList<>();
    depthsInDisorder(depthTopCentimetres, depthBottomCentimetres).ifPresent(problems::add);
    if (latitude.isPresent() != longitude.isPresent()) {
      problems.add(
          latitude.isPresent()
              ? "latitude stands alone: expected longitude beside it"
              : "longitude stands alone: expected latitude beside it");
    }
    if (!problems.isEmpty()) {
      throw new SampleException(problems);
    }
  }

  /** The sample of a record; what is not as records keep it counts as not known. */
  public static Sample of(ObjectNode record) {
    return new Sample(
        text(record, SampleField.NUMBER).orElse(""),
        text(record, SampleField.GROWER),
        text(record, SampleField.FARM),
        text(record, SampleField.FIELD),
        text(record, SampleField.TRACT),
        text(record, SampleField.KIND).flatMap(SampleKind::of),
        number(record, SampleField.DEPTH_TOP),
        number(record, SampleField.DEPTH_BOTTOM),
        text(record, SampleField.TAKEN).map(OffsetDateTime::parse),
        text(record, SampleField.TAKEN_BY),
        number(record, SampleField.LATITUDE),
        number(record, SampleField.LONGITUDE),
        value(record, SampleField.COOLED, JsonNode::booleanValue),
        number(record, SampleField.KEPT_CELSIUS),
        value(record, SampleField.CONTAINER_RINSED, JsonNode::booleanValue),
        number(record, SampleField.MOISTURE),
        text(record, SampleField.RECIPE),
        text(record, SampleField.NOTES));
  }

  /**
   * Why a sample cannot have been taken when it is said to have been; empty where it can, where
   * nobody says when, and where {@code now} is no date.
   */
  public Optional<String> takenAfter(Instant now) {
    return hasDate(now)
        ? taken
            .filter(time -> time.toInstant().isAfter(now.plus(CLOCKS_DIFFER)))
            .map("taken: expected a time that has passed; found %s"::formatted)
        : Optional.empty();
  }

  /** Whether an instant is one of the calendar rather than a count from some zero. */
  static boolean hasDate(Instant time) {
    return !time.isBefore(FIRST_DATE);
  }

  static Optional<String> depthsInDisorder(ObjectNode record) {
    return depthsInDisorder(
        number(record, SampleField.DEPTH_TOP), number(record, SampleField.DEPTH_BOTTOM));
  }

  private static Optional<String> depthsInDisorder(OptionalDouble top, OptionalDouble bottom) {
    return top.isPresent() && bottom.isPresent() && top.getAsDouble() > bottom.getAsDouble()
        ? Optional.of(
            "depthBottomCentimetres: expected no less than depthTopCentimetres, %s; found %s"
                .formatted(plain(top.getAsDouble()), plain(bottom.getAsDouble())))
        : Optional.empty();
  }

  private static String plain(double number) {
    return number == Math.rint(number) ? "%.0f".formatted(number) : Double.toString(number);
  }

  private static Optional<String> text(ObjectNode record, SampleField field) {
    return value(record, field, JsonNode::textValue);
  }

  private static OptionalDouble number(ObjectNode record, SampleField field) {
    return value(record, field, JsonNode::doubleValue)
        .map(OptionalDouble::of)
        .orElseGet(OptionalDouble::empty);
  }

  private static <T> Optional<T> value(
      ObjectNode record, SampleField field, Function<JsonNode, T> as) {
    return Optional.ofNullable(record.get(field.key())).flatMap(field.form()::read).map(as);
  }
}
