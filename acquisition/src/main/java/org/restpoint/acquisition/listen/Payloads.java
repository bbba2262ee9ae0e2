package org.restpoint.acquisition.listen;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.restpoint.adapters.text.DecimalNumber;

/** Finds the numbers in a message of which nothing is known. */
final class Payloads {

  /** Of a larger message no more is looked at. */
  private static final int MOST_LEAVES = 200;

  private static final int MOST_PLACES = 30;

  private static final ObjectMapper JSON =
      JsonMapper.builder()
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .build();

  private Payloads() {}

  /** How a message is written. */
  enum Kind {
    /** One decimal number. */
    NUMBER,
    /** A SenML pack. */
    SENML,
    /** Other JSON. */
    JSON
  }

  /**
   * The numbers of one message.
   *
   * @param kind how it is written
   * @param leaves its numbers by pointer or by full name, and for JSON its texts too; in their
   *     order
   */
  record Payload(Kind kind, Map<String, Leaf> leaves) {}

  /**
   * A value.
   *
   * @param name what it is called in the message
   * @param text as it stands there
   * @param unit its unit, where the message says it
   * @param isNumber whether it is a number
   */
  record Leaf(String name, String text, Optional<String> unit, boolean isNumber) {}

  /** The numbers of a message; empty where it is none of the kinds. */
  static Optional<Payload> read(String message) {
    if (DecimalNumber.in(message).isPresent()) {
      Leaf leaf = new Leaf("", message.strip(), Optional.empty(), true);
      return Optional.of(new Payload(Kind.NUMBER, Map.of("", leaf)));
    }
    try {
      JsonNode tree = JSON.readTree(message);
      Map<String, Leaf> leaves = new LinkedHashMap<>();
      if (isSenMl(tree)) {
        pack(tree, leaves);
        return Optional.of(new Payload(Kind.SENML, leaves));
      }
      if (tree.isContainerNode()) {
        walk("", "", tree, leaves);
        return Optional.of(new Payload(Kind.JSON, leaves));
      }
      return Optional.empty();
    } catch (JsonProcessingException e) {
      // It is not JSON, which is what was asked.
      return Optional.empty();
    }
  }

  private static boolean isSenMl(JsonNode tree) {
    return tree.isArray() && !tree.isEmpty() && (tree.get(0).has("n") || tree.get(0).has("bn"));
  }

  private static void pack(JsonNode tree, Map<String, Leaf> leaves) {
    String base = "";
    String baseUnit = "";
    for (JsonNode node : tree) {
      base = node.path("bn").asText(base);
      baseUnit = node.path("bu").asText(baseUnit);
      String unit = node.path("u").asText(baseUnit);
      String name = node.path("n").asText("");
      if (node.path("v").isNumber() && leaves.size() < MOST_LEAVES) {
        Leaf leaf =
            new Leaf(
                name.isEmpty() ? base : name,
                number(node.path("v")),
                unit.isEmpty() ? Optional.empty() : Optional.of(unit),
                true);
        leaves.put(base + name, leaf);
      }
    }
  }

  private static void walk(String pointer, String name, JsonNode node, Map<String, Leaf> leaves) {
    if (leaves.size() >= MOST_LEAVES) {
      return;
    }
    if (node.isObject()) {
      node.properties()
          .forEach(
              each ->
                  walk(
                      pointer + "/" + token(each.getKey()),
                      each.getKey(),
                      each.getValue(),
                      leaves));
    } else if (node.isArray()) {
      for (int i = 0; i < node.size(); i++) {
        walk(pointer + "/" + i, name, node.get(i), leaves);
      }
    } else if (node.isNumber() || node.isTextual()) {
      String text = node.isNumber() ? number(node) : node.textValue();
      leaves.put(pointer, new Leaf(name, text, Optional.empty(), node.isNumber()));
    }
  }

  /** In full; a number with more places than any device has is cut to a double. */
  private static String number(JsonNode node) {
    BigDecimal number = node.decimalValue();
    return Math.abs(number.scale()) <= MOST_PLACES && number.precision() <= MOST_PLACES
        ? number.toPlainString()
        : Double.toString(number.doubleValue());
  }

  /** A name as a token of a JSON pointer (RFC 6901). */
  private static String token(String name) {
    return name.replace("~", "~0").replace("/", "~1");
  }
}
