package org.restpoint.acquisition.instruction;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.Instruction.Task;
import org.restpoint.acquisition.sample.SampleException;
import org.restpoint.acquisition.sample.SampleReader;

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
          "sample",
          "rinsed",
          "store",
          "replaced",
          "accept-standard",
          "forget",
          "cancel",
          "batch",
          "next",
          "in-place",
          "done");

  private static final String THE_STANDARD = "the name of the standard the electrode is in";

  private static final int MOST_MINUTES = 7 * 24 * 60;

  private static final int MOST_DAYS = 3660;

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
      case "sample" -> keepSample(fields);
      case "soak" -> soak(fields);
      case "rinsed" -> rinsed(fields);
      case "store" -> store(fields);
      case "replaced" -> replaced(fields);
      case "accept-standard" -> acceptStandard(fields);
      case "forget" -> forget(fields);
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
    fields.only("measure", "sample", "recipe", "private");
    return new Instruction.Measure(
        fields.find("sample").map(InstructionReader::sample),
        fields.text("recipe"),
        fields.flag("private").orElse(false));
  }

  private static ObjectNode sample(JsonNode sample) {
    if (sample instanceof ObjectNode record) {
      return told(record);
    }
    if (Fields.isShortText(sample)) {
      return told(EventJson.mapper().createObjectNode().set("number", sample));
    }
    throw new InstructionException(
        "sample: expected a sample number in quotes, 1 to 200 characters, or a record in braces; found "
            + Fields.shown(sample.toString()));
  }

  private static Task keepSample(Fields fields) {
    fields.only("sample", "sample");
    JsonNode sample =
        fields
            .find("sample")
            .orElseThrow(() -> Fields.missing("sample", "a record in braces with its number"));
    if (sample instanceof ObjectNode record) {
      return new Instruction.KeepSample(told(record));
    }
    throw new InstructionException(
        "sample: expected a record in braces with its number; found "
            + Fields.shown(sample.toString()));
  }

  private static ObjectNode told(ObjectNode record) {
    try {
      return SampleReader.read(record);
    } catch (SampleException e) {
      throw new InstructionException("sample: " + e.getMessage());
    }
  }

  private static Task verify(Fields fields) {
    fields.only("verify", "role", "standard", "sample");
    String word = fields.text("role").orElseGet(CheckRole.CHECK_STANDARD::word);
    CheckRole role =
        CheckRole.of(word)
            .orElseThrow(
                () ->
                    new InstructionException(
                        "role: expected check-standard, blank, duplicate or spike; found %s"
                            .formatted(Fields.shown(word))));
    String as = "verify role=" + role.word();
    if (role == CheckRole.CHECK_STANDARD) {
      fields.only(as, "role", "standard");
      return new Instruction.Verify(role, fields.text("standard"), Optional.empty());
    }
    if (role == CheckRole.BLANK) {
      fields.only(as, "role");
      return new Instruction.Verify(role, Optional.empty(), Optional.empty());
    }
    fields.only(as, "role", "sample");
    String sample = fields.need("sample", "the number of a sample that was measured before");
    return new Instruction.Verify(role, Optional.empty(), Optional.of(sample));
  }

  private static Task rinsed(Fields fields) {
    fields.only("rinsed", "into");
    return new Instruction.Rinsed(fields.text("into"));
  }

  private static Task store(Fields fields) {
    fields.only("store", "days");
    return new Instruction.Store(
        fields.whole("days", 1, MOST_DAYS).map(days -> Duration.ofDays(days)));
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

  private static Task acceptStandard(Fields fields) {
    fields.only("accept-standard", "because");
    return new Instruction.AcceptStandard(fields.text("because"));
  }

  private static Task forget(Fields fields) {
    fields.only("forget", "sample");
    return new Instruction.Forget(fields.text("sample"));
  }

  private static Task soak(Fields fields) {
    fields.only("soak", "minutes");
    return new Instruction.Soak(
        fields.whole("minutes", 1, MOST_MINUTES).map(minutes -> Duration.ofMinutes(minutes)));
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
