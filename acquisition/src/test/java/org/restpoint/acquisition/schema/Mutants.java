package org.restpoint.acquisition.schema;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Objects that are each wrong in one place. */
final class Mutants {

  private static final Map<String, JsonNode> SHAPES =
      Map.ofEntries(
          shape("sample", "sample.json", "/$defs/record"),
          shape("changed", "sample.json", "/$defs/change"),
          shape("causes", "calibration.json", "/$defs/cause"),
          shape("budget", "result.json", "/$defs/budgetLine"),
          shape("remarks", "terms.json", "/$defs/reason"),
          shape("reasons", "terms.json", "/$defs/reason"),
          shape("points", "calibration.json", "/$defs/point"),
          shape("members", "settling.json", "/$defs/member"),
          shape("calibration", "result.json", "/$defs/calibrationUsed"),
          shape("concentration", "result.json", "/$defs/amount"),
          shape("reported", "result.json", "/$defs/reported"),
          shape("verification", "result.json", "/$defs/verification"),
          shape("revised", "result.json", "/$defs/revised"),
          shape("preparation", "result.json", "/$defs/preparation"),
          shape("figures", "result.json", "/$defs/preparation/properties/figures/items"),
          shape("cups", "batch.json", "/$defs/cup"),
          shape("cup", "instruction.json", "/$defs/cup"));

  private Mutants() {}

  private static Map.Entry<String, JsonNode> shape(String name, String file, String pointer) {
    return Map.entry(name, Schemas.schema(file).at(pointer));
  }

  /** A wrong object and what is wrong with it. */
  record Mutant(String wrong, JsonNode object) {}

  /** With a field more, in the object and in each object inside it. */
  static List<Mutant> withAnExtraField(JsonNode object) {
    List<Mutant> mutants = new ArrayList<>();
    for (String path : paths(object)) {
      if (object.at(path).isObject()) {
        JsonNode copy = object.deepCopy();
        ((ObjectNode) copy.at(path)).put("extra", 1);
        mutants.add(new Mutant("a field more in " + path, copy));
      }
    }
    return mutants;
  }

  /** Without a field that is always there. */
  static List<Mutant> withoutAField(JsonNode object) {
    List<Mutant> mutants = new ArrayList<>();
    for (String path : paths(object)) {
      if (object.at(path).isObject()) {
        for (JsonNode field : shape(object, path).path("required")) {
          JsonNode copy = object.deepCopy();
          ((ObjectNode) copy.at(path)).remove(field.asText());
          mutants.add(new Mutant("no %s in %s".formatted(field.asText(), path), copy));
        }
      }
    }
    return mutants;
  }

  /** With a value of another type. */
  static List<Mutant> withAWrongType(JsonNode object) {
    List<Mutant> mutants = new ArrayList<>();
    for (String path : paths(object)) {
      if (!path.isEmpty()) {
        JsonNode right = object.at(path);
        JsonNode wrong =
            right.isTextual() || right.isObject() ? IntNode.valueOf(5) : TextNode.valueOf("5");
        JsonNode copy = object.deepCopy();
        int slash = path.lastIndexOf('/');
        String name = path.substring(slash + 1);
        if (copy.at(path.substring(0, slash)) instanceof ArrayNode array) {
          array.set(Integer.parseInt(name), wrong);
        } else {
          ((ObjectNode) copy.at(path.substring(0, slash))).set(name, wrong);
        }
        mutants.add(new Mutant("%s for %s in %s".formatted(wrong, right, path), copy));
      }
    }
    return mutants;
  }

  private static JsonNode shape(JsonNode object, String path) {
    if (path.isEmpty() || path.equals("/outcome")) {
      return Schemas.schema(Schemas.payload(object.at(path)) + ".json");
    }
    String name = path.replaceAll("/[0-9]+$", "");
    JsonNode shape = SHAPES.get(name.substring(name.lastIndexOf('/') + 1));
    if (shape == null) {
      throw new IllegalStateException("no shape is known for " + path);
    }
    return shape;
  }

  /** The fields of an object and of the objects inside it, however often they come in a list. */
  static Set<String> fields(JsonNode object) {
    return paths(object).stream()
        .map(path -> path.replaceAll("/[0-9]+", "/*"))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** The pointers to all values of an object, but to those that may be of several types. */
  private static List<String> paths(JsonNode object) {
    List<String> paths = new ArrayList<>();
    collect("", object, paths);
    return paths;
  }

  private static void collect(String path, JsonNode node, List<String> paths) {
    if (path.endsWith("/before") || path.endsWith("/after")) {
      return;
    }
    paths.add(path);
    node.properties()
        .forEach(entry -> collect(path + "/" + entry.getKey(), entry.getValue(), paths));
    if (node instanceof ArrayNode array) {
      for (int i = 0; i < array.size(); i++) {
        collect(path + "/" + i, array.get(i), paths);
      }
    }
  }
}
