package org.restpoint.acquisition.instruction;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
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
      List.of(
          "soak",
          "calibrate",
          "measure",
          "verify",
          "rinsed",
          "replaced",
          "cancel",
          "batch",
          "next",
          "in-place",
          "done");

  private static final String THE_STANDARD = "the name of the standard the electrode is in";

  /** A sample's record is a form, not a library; it is written again inside of results. */
  private static final int DEEPEST_SAMPLE = 8;

  private static final int MOST_MINUTES = 7 * 24 * 60;

  /** How long an electrode soaks unless told: first thing in the morning, common practice. */
  private static final Duration SOAK = Duration.ofMinutes(20);

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
    Fields fields = Fields.of(json);
    Task task = task(fields.need("do", "an instruction: " + words()), fields);
    return new Addressed(
        fields.time(), fields.text("probe"), new Instruction(fields.text("id"), task));
  }

  private static Task task(String word, Fields fields) {
    return switch (word) {
      case "calibrate" -> calibrate(fields);
      case "measure" -> measure(fields);
      case "verify" -> verify(fields);
      case "soak" -> soak(fields);
      case "rinsed" -> alone(fields, new Instruction.Rinsed());
      case "replaced" -> replaced(fields);
      case "cancel" -> alone(fields, new Instruction.Cancel());
      case "batch" -> batch(fields);
      case "next" -> next(fields);
      case "in-place" -> inPlace(fields);
      case "done" -> alone(fields, new Instruction.Done());
      default ->
          throw new InstructionException(
              "do: expected an instruction (%s); found %s".formatted(words(), Fields.shown(word)));
    };
  }

  private static Task alone(Fields fields, Task task) {
    fields.only(task.word());
    return task;
  }

  private static Task calibrate(Fields fields) {
    fields.only("calibrate", "standard");
    return new Instruction.Calibrate(fields.need("standard", THE_STANDARD));
  }

  private static Task measure(Fields fields) {
    fields.only("measure", "sample");
    return new Instruction.Measure(fields.find("sample").map(InstructionReader::sample));
  }

  private static ObjectNode sample(JsonNode sample) {
    if (sample instanceof ObjectNode record) {
      if (isDeeperThan(DEEPEST_SAMPLE, record)) {
        throw new InstructionException(
            "sample: expected a record nested at most %d deep; found a deeper one"
                .formatted(DEEPEST_SAMPLE));
      }
      return record;
    }
    if (Fields.isShortText(sample)) {
      ObjectNode record = EventJson.mapper().createObjectNode();
      record.put("number", sample.textValue());
      return record;
    }
    throw new InstructionException(
        "sample: expected a sample number in quotes, 1 to 200 characters, or a record in braces; found "
            + Fields.shown(sample.toString()));
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

  private static Task verify(Fields fields) {
    fields.only("verify", "role", "standard");
    String role = fields.text("role").orElse("check-standard");
    if (!role.equals("check-standard")) {
      throw new InstructionException(
          "role: expected check-standard; found %s".formatted(Fields.shown(role)));
    }
    return new Instruction.Verify(fields.need("standard", THE_STANDARD));
  }

  private static Task replaced(Fields fields) {
    fields.only("replaced", "part");
    String part = fields.text("part").orElseGet(Instruction.Part.MEMBRANE::word);
    return Arrays.stream(Instruction.Part.values())
        .filter(known -> known.word().equals(part))
        .<Task>map(Instruction.Replaced::new)
        .findFirst()
        .orElseThrow(
            () ->
                new InstructionException(
                    "part: expected membrane or electrode; found %s"
                        .formatted(Fields.shown(part))));
  }

  private static Task soak(Fields fields) {
    fields.only("soak", "minutes");
    return new Instruction.Soak(
        fields
            .whole("minutes", 1, MOST_MINUTES)
            .map(minutes -> Duration.ofMinutes(minutes))
            .orElse(SOAK));
  }

  private static Task batch(Fields fields) {
    fields.only("batch", "cups");
    return new Instruction.Batch(
        CupReader.list(fields.find("cups").orElseThrow(() -> CupReader.missing("cups"))));
  }

  private static Task next(Fields fields) {
    fields.only("next", "skip");
    return new Instruction.Next(fields.flag("skip").orElse(false));
  }

  private static Task inPlace(Fields fields) {
    fields.only("in-place", "cup");
    return new Instruction.InPlace(fields.text("cup"));
  }

  private static String words() {
    return String.join(", ", WORDS);
  }
}
