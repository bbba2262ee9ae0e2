package org.restpoint.acquisition.instruction;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.restpoint.acquisition.event.EventJson;

/**
 * The fields of an instruction's JSON object. Each method refuses what it does not find as it
 * should be, with an {@link InstructionException} in words for the person.
 */
final class Fields {

  /** Longer than any instruction a person writes; what is longer is not read at all. */
  private static final int MOST_CHARACTERS = 65_536;

  private static final int MOST_SHOWN = 60;

  private static final int MOST_EXPLAINED = 300;

  /** Seconds have no more before the point; so a number like 1e999999 is not written out. */
  private static final int MOST_DIGITS = 15;

  private static final Instant EARLIEST = Instant.parse("1970-01-01T00:00:00Z");
  private static final Instant LATEST = Instant.parse("2200-01-01T00:00:00Z");

  private static final Set<String> EVERYWHERE = Set.of("id", "time", "probe", "do");

  private final ObjectNode node;

  private Fields(ObjectNode node) {
    this.node = node;
  }

  /** The fields of an object that stands inside another. */
  static Fields of(ObjectNode node) {
    return new Fields(node);
  }

  /** The fields of the only object in a text. */
  static Fields of(String json) {
    if (json.length() > MOST_CHARACTERS) {
      throw new InstructionException(
          "expected an instruction of at most %d characters; found %d"
              .formatted(MOST_CHARACTERS, json.length()));
    }
    if (json.isBlank()) {
      throw new InstructionException(
          "expected an instruction as a JSON object, like {\"do\":\"measure\"}; found nothing");
    }
    try {
      if (EventJson.mapper().readTree(json) instanceof ObjectNode object) {
        return new Fields(object);
      }
    } catch (JsonProcessingException e) {
      throw new InstructionException(
          "expected an instruction as a JSON object; found text that is not JSON: "
              + shown(e.getOriginalMessage(), MOST_EXPLAINED));
    }
    throw new InstructionException(
        "expected an instruction as a JSON object, like {\"do\":\"measure\"}; found other JSON");
  }

  /** Refuses every field but these and those that any instruction may have. */
  void only(String word, String... fields) {
    Set<String> known = new TreeSet<>(EVERYWHERE);
    known.addAll(Set.of(fields));
    Set<String> unknown = new TreeSet<>();
    node.fieldNames().forEachRemaining(unknown::add);
    unknown.removeAll(known);
    if (!unknown.isEmpty()) {
      throw new InstructionException(
          "%s takes %s; found %s"
              .formatted(word, String.join(", ", known), shown(String.join(", ", unknown))));
    }
  }

  /** A field as it stands. */
  Optional<JsonNode> find(String field) {
    return Optional.ofNullable(node.get(field));
  }

  /** A text of 1 to 200 characters. */
  Optional<String> text(String field) {
    Optional<JsonNode> value = find(field);
    if (value.isPresent() && !isShortText(value.get())) {
      throw new InstructionException(
          "%s: expected text in quotes, 1 to 200 characters; found %s"
              .formatted(field, shown(value.get().toString())));
    }
    return value.map(JsonNode::textValue);
  }

  /** A text that must be there; {@code what} says what it is. */
  String need(String field, String what) {
    return text(field).orElseThrow(() -> missing(field, what));
  }

  /** A whole number from {@code least} to {@code most}. */
  Optional<Integer> whole(String field, int least, int most) {
    Optional<JsonNode> value = find(field);
    if (value.isPresent()
        && (!value.get().canConvertToExactIntegral()
            || !value.get().canConvertToInt()
            || value.get().intValue() < least
            || value.get().intValue() > most)) {
      throw new InstructionException(
          "%s: expected a whole number from %d to %d; found %s"
              .formatted(field, least, most, shown(value.get().toString())));
    }
    return value.map(JsonNode::intValue);
  }

  /** True or false. */
  Optional<Boolean> flag(String field) {
    Optional<JsonNode> value = find(field);
    if (value.isPresent() && !value.get().isBoolean()) {
      throw new InstructionException(
          "%s: expected true or false; found %s".formatted(field, shown(value.get().toString())));
    }
    return value.map(JsonNode::booleanValue);
  }

  /** ISO 8601 in UTC, or seconds from the zero of a recording. */
  Optional<Instant> time() {
    return find("time").map(Fields::time);
  }

  static boolean isShortText(JsonNode value) {
    return value.isTextual() && !value.textValue().isBlank() && value.textValue().length() <= 200;
  }

  /** What was found, cut where it is long. */
  static String shown(String found) {
    return shown(found, MOST_SHOWN);
  }

  private static String shown(String found, int most) {
    return found.length() <= most ? found : found.substring(0, most) + " ...";
  }

  private static Instant time(JsonNode value) {
    Instant time;
    try {
      time = value.isNumber() ? fromZero(value.decimalValue()) : Instant.parse(value.asText());
    } catch (DateTimeParseException | ArithmeticException | NumberFormatException e) {
      throw new InstructionException(
          "time: expected ISO 8601 in UTC, like 2026-04-02T14:03:00Z, or seconds from zero; found "
              + shown(value.toString()));
    }
    if (time.isBefore(EARLIEST) || !time.isBefore(LATEST)) {
      throw new InstructionException(
          "time: expected a time from 1970 to 2199; found " + shown(value.toString()));
    }
    return time;
  }

  private static Instant fromZero(BigDecimal seconds) {
    if (seconds.precision() - seconds.scale() > MOST_DIGITS) {
      throw new ArithmeticException("more seconds than a time can have");
    }
    return Instant.ofEpochMilli(
        seconds.movePointRight(3).setScale(0, RoundingMode.HALF_EVEN).longValueExact());
  }

  static InstructionException missing(String field, String what) {
    return new InstructionException("%s is missing: expected %s".formatted(field, what));
  }
}
