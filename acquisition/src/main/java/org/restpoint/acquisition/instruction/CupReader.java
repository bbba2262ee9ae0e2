package org.restpoint.acquisition.instruction;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.Instruction.Task;

/**
 * Reads the list of a batch. Each line is checked by turning it into the instruction that will read
 * the cup; all mistakes are told at once, each with its cup.
 */
final class CupReader {

  /** A rig's table has a hundred places or two; more is not one batch. Our choice. */
  private static final int MOST_CUPS = 500;

  /** What a cup may hold, exactly one of them. */
  private static final List<String> KINDS =
      List.of("standard", "sample", "check", "blank", "duplicate", "spike", "rinse");

  private static final String A_LIST = "a list of 1 to %d cups in braces".formatted(MOST_CUPS);

  private CupReader() {}

  static InstructionException missing(String field) {
    return Fields.missing(field, A_LIST);
  }

  /** Reads a whole list. */
  static List<Cup> list(JsonNode cups) {
    if (!cups.isArray() || cups.isEmpty() || cups.size() > MOST_CUPS) {
      String found = cups.isArray() ? cups.size() + " of them" : Fields.shown(cups.toString());
      throw new InstructionException("cups: expected %s; found %s".formatted(A_LIST, found));
    }
    List<Cup> read = new ArrayList<>();
    List<String> problems = new ArrayList<>();
    Map<String, Integer> places = new HashMap<>();
    int place = 0;
    for (JsonNode line : cups) {
      place++;
      try {
        Cup cup = cup(line);
        Integer first = places.putIfAbsent(cup.name(), place);
        if (first != null) {
          throw new InstructionException(
              "expected a name of its own; found it again, first at " + first);
        }
        read.add(cup);
      } catch (InstructionException e) {
        problems.add("%s: %s".formatted(named(line, place), e.getMessage()));
      }
    }
    if (!problems.isEmpty()) {
      throw new InstructionException(String.join("\n", problems));
    }
    return read;
  }

  private static String named(JsonNode line, int place) {
    String name = line.path("cup").asText();
    return name.isEmpty()
        ? "cup at %d".formatted(place)
        : "cup %s (at %d)".formatted(Fields.shown(name), place);
  }

  /** Reads one line. */
  static Cup cup(JsonNode line) {
    if (!(line instanceof ObjectNode object)) {
      throw new InstructionException(
          "expected a cup in braces, like {\"cup\":\"2\",\"sample\":\"S-1\"}; found "
              + Fields.shown(line.toString()));
    }
    Fields fields = Fields.of(object);
    String name = fields.need("cup", "its name");
    checkKeys(object);
    String kind = kind(object);
    checkValue(kind, fields);
    Optional<Task> reading =
        kind.equals("rinse")
            ? Optional.empty()
            : Optional.of(InstructionReader.read(instruction(kind, object)).instruction().task());
    return new Cup(name, holds(kind, object), reading, object.deepCopy());
  }

  private static void checkKeys(ObjectNode line) {
    TreeSet<String> unknown = new TreeSet<>();
    line.fieldNames().forEachRemaining(unknown::add);
    KINDS.forEach(unknown::remove);
    unknown.remove("cup");
    unknown.remove("recipe");
    if (!unknown.isEmpty()) {
      throw new InstructionException(
          "a cup takes cup, %s, recipe; found %s"
              .formatted(String.join(", ", KINDS), Fields.shown(String.join(", ", unknown))));
    }
  }

  private static String kind(ObjectNode line) {
    List<String> there = KINDS.stream().filter(line::has).toList();
    if (there.size() != 1) {
      throw new InstructionException(
          "expected exactly one of %s; found %s"
              .formatted(
                  String.join(", ", KINDS),
                  there.isEmpty() ? "none" : String.join(" and ", there)));
    }
    if (there.get(0).equals("rinse") && line.has("recipe")) {
      throw new InstructionException("recipe: expected none for a cup to rinse in");
    }
    return there.get(0);
  }

  private static void checkValue(String kind, Fields fields) {
    if (kind.equals("blank") || kind.equals("rinse")) {
      if (!fields.flag(kind).orElse(false)) {
        throw new InstructionException(kind + ": expected true, or leave it out; found false");
      }
    } else if (!kind.equals("sample")) {
      fields.need(kind, "a name in quotes");
    }
  }

  /** The instruction that reads a cup, as a person would give it. */
  private static String instruction(String kind, ObjectNode line) {
    ObjectNode node = EventJson.mapper().createObjectNode();
    switch (kind) {
      case "standard" -> node.put("do", "calibrate").set("standard", line.get(kind));
      case "sample" -> node.put("do", "measure").set("sample", line.get(kind));
      case "check" ->
          node.put("do", "verify").put("role", "check-standard").set("standard", line.get(kind));
      case "blank" -> node.put("do", "verify").put("role", kind);
      default -> node.put("do", "verify").put("role", kind).set("sample", line.get(kind));
    }
    if (line.has("recipe")) {
      node.set("recipe", line.get("recipe"));
    }
    return node.toString();
  }

  private static String holds(String kind, ObjectNode line) {
    JsonNode value = line.get(kind);
    return switch (kind) {
      case "blank" -> "a blank";
      case "rinse" -> "to rinse in";
      case "check" -> "standard %s as a check".formatted(value.asText());
      case "duplicate", "spike" -> "a %s of sample %s".formatted(kind, value.asText());
      case "sample" ->
          value.isTextual()
              ? "sample " + value.asText()
              : "sample " + value.path("number").asText("without a number");
      default -> kind + " " + value.asText();
    };
  }
}
