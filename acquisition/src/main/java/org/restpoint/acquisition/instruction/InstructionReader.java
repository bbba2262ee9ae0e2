package org.restpoint.acquisition.instruction;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
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
      List.of("soak", "calibrate", "measure", "verify", "rinsed", "replaced", "cancel");

  /** How long an electrode soaks unless told: first thing in the morning, common practice. */
  private static final Duration SOAK = Duration.ofMinutes(20);

  /** Longer than any instruction a person writes; what is longer is not read at all. */
  private static final int MOST_CHARACTERS = 65_536;

  /** A sample's record is a form, not a library; it is written again inside of results. */
  private static final int DEEPEST_SAMPLE = 8;

  private static final int MOST_SHOWN = 60;

  private static final int MOST_EXPLAINED = 300;

  /** Seconds have no more before the point; so a number like 1e999999 is not written out. */
  private static final int MOST_DIGITS = 15;

  private static final Instant EARLIEST = Instant.parse("1970-01-01T00:00:00Z");
  private static final Instant LATEST = Instant.parse("2200-01-01T00:00:00Z");

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
          case "replaced" -> replaced(node);
          case "cancel" -> only(node, word, Set.of(), new Instruction.Cancel());
          default ->
              throw new InstructionException(
                  "do: expected an instruction (%s); found %s".formatted(words(), shown(word)));
        };
    return new Addressed(
        Optional.ofNullable(node.get("time")).map(InstructionReader::time),
        text(node, "probe"),
        new Instruction(text(node, "id"), task));
  }

  private static ObjectNode object(String json) {
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
      if (EventJson.mapper().readTree(json) instanceof ObjectNode node) {
        return node;
      }
    } catch (JsonProcessingException e) {
      throw new InstructionException(
          "expected an instruction as a JSON object; found text that is not JSON: "
              + shown(e.getOriginalMessage(), MOST_EXPLAINED));
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
      if (isDeeperThan(DEEPEST_SAMPLE, record)) {
        throw new InstructionException(
            "sample: expected a record nested at most %d deep; found a deeper one"
                .formatted(DEEPEST_SAMPLE));
      }
      return new Instruction.Measure(Optional.of(record));
    }
    if (isShortText(sample)) {
      ObjectNode record = EventJson.mapper().createObjectNode();
      record.put("number", sample.textValue());
      return new Instruction.Measure(Optional.of(record));
    }
    throw new InstructionException(
        "sample: expected a sample number in quotes, 1 to 200 characters, or a record in braces; found "
            + shown(sample.toString()));
  }

  private static boolean isDeeperThan(int levels, JsonNode node) {
    if (!node.isContainerNode()) {
      return false;
    }
    if (levels == 0) {
      return true;
    }
    for (JsonNode child : node) {
      if (isDeeperThan(levels - 1, child)) {
        return true;
      }
    }
    return false;
  }

  private static Task verify(ObjectNode node) {
    only(node, "verify", Set.of("role", "standard"), node);
    String role = text(node, "role").orElse("check-standard");
    if (!role.equals("check-standard")) {
      throw new InstructionException(
          "role: expected check-standard; found %s".formatted(shown(role)));
    }
    return new Instruction.Verify(
        text(node, "standard")
            .orElseThrow(
                () -> missing("standard", "the name of the standard the electrode is in")));
  }

  private static Task replaced(ObjectNode node) {
    only(node, "replaced", Set.of("part"), node);
    String part = text(node, "part").orElseGet(Instruction.Part.MEMBRANE::word);
    return Arrays.stream(Instruction.Part.values())
        .filter(known -> known.word().equals(part))
        .<Task>map(Instruction.Replaced::new)
        .findFirst()
        .orElseThrow(
            () ->
                new InstructionException(
                    "part: expected membrane or electrode; found %s".formatted(shown(part))));
  }

  private static Task soak(ObjectNode node) {
    only(node, "soak", Set.of("minutes"), node);
    JsonNode minutes = node.get("minutes");
    if (minutes == null) {
      return new Instruction.Soak(SOAK);
    }
    if (!minutes.canConvertToExactIntegral()
        || !minutes.canConvertToInt()
        || minutes.intValue() < 1
        || minutes.intValue() > 7 * 24 * 60) {
      throw new InstructionException(
          "minutes: expected a whole number from 1 to 10080; found " + shown(minutes.toString()));
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
            .formatted(word, String.join(", ", known), shown(String.join(", ", unknown))));
  }

  private static Optional<String> text(ObjectNode node, String field) {
    JsonNode value = node.get(field);
    if (value == null) {
      return Optional.empty();
    }
    if (!isShortText(value)) {
      throw new InstructionException(
          "%s: expected text in quotes, 1 to 200 characters; found %s"
              .formatted(field, shown(value.toString())));
    }
    return Optional.of(value.textValue());
  }

  private static boolean isShortText(JsonNode value) {
    return value.isTextual() && !value.textValue().isBlank() && value.textValue().length() <= 200;
  }

  private static String shown(String found) {
    return shown(found, MOST_SHOWN);
  }

  private static String shown(String found, int most) {
    return found.length() <= most ? found : found.substring(0, most) + " ...";
  }

  /** ISO 8601 in UTC, or seconds from the zero of a recording. */
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

  private static InstructionException missing(String field, String what) {
    return new InstructionException("%s is missing: expected %s".formatted(field, what));
  }

  private static String words() {
    return String.join(", ", WORDS);
  }
}
