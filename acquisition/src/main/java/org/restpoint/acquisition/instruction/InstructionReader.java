package org.restpoint.acquisition.instruction;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.Instruction.Task;

/**
 * Reads an instruction from JSON: {@code {"id":"7","do":"calibrate","standard":"mid"}}.
 *
 * <p>Refuses, with an {@link InstructionException} in words for the person, text that is not a JSON
 * object, an unknown or missing {@code do}, a missing or misplaced field and a field of the wrong
 * kind.
 */
public final class InstructionReader {

  /** The words of all instructions. */
  public static final List<String> WORDS =
      List.of("soak", "calibrate", "measure", "verify", "rinsed", "cancel");

  /** How long an electrode soaks unless told: first thing in the morning, common practice. */
  private static final Duration SOAK = Duration.ofMinutes(20);

  private static final Set<String> EVERYWHERE = Set.of("id", "time", "probe", "do");

  private InstructionReader() {}

  /**
   * An instruction with what stands around it.
   *
   * @param time when it was given, where it says so
   * @param probe whom it is for, where it says so
   * @param instruction the instruction
   */
  public record Addressed(
      Optional<Instant> time, Optional<String> probe, Instruction instruction) {}

  /** Reads one instruction. */
  public static Addressed read(String json) {
    ObjectNode node = object(json);
    String word = text(node, "do").orElseThrow(() -> missing("do", "an instruction: " + words()));
    Task task =
        switch (word) {
          case "calibrate" -> new Instruction.Calibrate(standard(node, word));
          case "measure" -> measure(node);
          case "verify" -> verify(node);
          case "soak" -> soak(node);
          case "rinsed" -> only(node, word, Set.of(), new Instruction.Rinsed());
          case "cancel" -> only(node, word, Set.of(), new Instruction.Cancel());
          default ->
              throw new InstructionException(
                  "do: expected an instruction (%s); found %s".formatted(words(), word));
        };
    return new Addressed(
        Optional.ofNullable(node.get("time")).map(InstructionReader::time),
        text(node, "probe"),
        new Instruction(text(node, "id"), task));
  }

  private static ObjectNode object(String json) {
    try {
      if (EventJson.mapper().readTree(json) instanceof ObjectNode node) {
        return node;
      }
    } catch (JsonProcessingException e) {
      throw new InstructionException(
          "expected an instruction as a JSON object; found text that is not JSON: "
              + e.getOriginalMessage());
    }
    throw new InstructionException(
        "expected an instruction as a JSON object, like {\"do\":\"measure\"}; found other JSON");
  }

  private static String standard(ObjectNode node, String word) {
    only(node, word, Set.of("standard"), node);
    return text(node, "standard")
        .orElseThrow(() -> missing("standard", "the name of the standard the electrode is in"));
  }

  private static Task measure(ObjectNode node) {
    only(node, "measure", Set.of("sample"), node);
    JsonNode sample = node.get("sample");
    if (sample == null) {
      return new Instruction.Measure(Optional.empty());
    }
    if (sample instanceof ObjectNode record) {
      return new Instruction.Measure(Optional.of(record));
    }
    if (sample.isTextual()) {
      ObjectNode record = EventJson.mapper().createObjectNode();
      record.put("number", sample.textValue());
      return new Instruction.Measure(Optional.of(record));
    }
    throw new InstructionException(
        "sample: expected a sample number in quotes or a record in braces; found " + sample);
  }

  private static Task verify(ObjectNode node) {
    only(node, "verify", Set.of("role", "standard"), node);
    String role = text(node, "role").orElse("check-standard");
    if (!role.equals("check-standard")) {
      throw new InstructionException("role: expected check-standard; found %s".formatted(role));
    }
    return new Instruction.Verify(
        text(node, "standard")
            .orElseThrow(
                () -> missing("standard", "the name of the standard the electrode is in")));
  }

  private static Task soak(ObjectNode node) {
    only(node, "soak", Set.of("minutes"), node);
    JsonNode minutes = node.get("minutes");
    if (minutes == null) {
      return new Instruction.Soak(SOAK);
    }
    if (!minutes.canConvertToInt() || minutes.intValue() < 1 || minutes.intValue() > 7 * 24 * 60) {
      throw new InstructionException(
          "minutes: expected a whole number from 1 to 10080; found " + minutes);
    }
    return new Instruction.Soak(Duration.ofMinutes(minutes.intValue()));
  }

  private static <T> T only(ObjectNode node, String word, Set<String> fields, T value) {
    Set<String> unknown = new TreeSet<>();
    node.fieldNames()
        .forEachRemaining(
            name -> {
              if (!EVERYWHERE.contains(name) && !fields.contains(name)) {
                unknown.add(name);
              }
            });
    if (unknown.isEmpty()) {
      return value;
    }
    Set<String> known = new TreeSet<>(EVERYWHERE);
    known.addAll(fields);
    throw new InstructionException(
        "%s takes %s; found %s"
            .formatted(word, String.join(", ", known), String.join(", ", unknown)));
  }

  private static Optional<String> text(ObjectNode node, String field) {
    JsonNode value = node.get(field);
    if (value == null) {
      return Optional.empty();
    }
    if (!value.isTextual() || value.textValue().isBlank() || value.textValue().length() > 200) {
      throw new InstructionException(
          "%s: expected text in quotes, 1 to 200 characters; found %s".formatted(field, value));
    }
    return Optional.of(value.textValue());
  }

  /** ISO 8601 in UTC, or seconds from the zero of a recording. */
  private static Instant time(JsonNode value) {
    try {
      if (value.isNumber()) {
        BigDecimal millis = value.decimalValue().movePointRight(3);
        return Instant.ofEpochMilli(millis.setScale(0, RoundingMode.HALF_EVEN).longValueExact());
      }
      return Instant.parse(value.asText());
    } catch (DateTimeParseException | ArithmeticException e) {
      throw new InstructionException(
          "time: expected ISO 8601 in UTC, like 2026-04-02T14:03:00Z, or seconds from zero; found "
              + value);
    }
  }

  private static InstructionException missing(String field, String what) {
    return new InstructionException("%s is missing: expected %s".formatted(field, what));
  }

  private static String words() {
    return String.join(", ", WORDS);
  }
}
