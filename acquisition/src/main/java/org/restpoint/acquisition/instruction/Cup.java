package org.restpoint.acquisition.instruction;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.Instruction.Task;

/**
 * A cup of a batch. Its JSON form is its line in the list: {@code {"cup":"2","sample":"S-1"}}.
 *
 * @param name its name, its own in the list
 * @param holds what it holds, in plain words: {@code sample S-1}
 * @param reading the instruction that reads it; empty for a cup to rinse in
 * @param line its line in the list
 */
public record Cup(String name, String holds, Optional<Task> reading, ObjectNode line) {

  /**
   * Reads a line of a list.
   *
   * @throws InstructionException in words for the person
   */
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  public static Cup of(ObjectNode line) {
    return CupReader.cup(line);
  }

  /** Its line in the list. */
  @JsonValue
  @Override
  public ObjectNode line() {
    return line.deepCopy();
  }

  /** The standard that it holds, to calibrate with or to check by. */
  public Optional<String> standard() {
    return Optional.ofNullable(line.get("standard"))
        .or(() -> Optional.ofNullable(line.get("check")))
        .map(name -> name.textValue());
  }

  /** Whether a line of a list is a cup of a sample, or of a portion of it. */
  public static boolean isOf(ObjectNode line, String sampleNumber) {
    return Stream.of("sample", "duplicate", "spike")
        .map(line::path)
        .map(held -> held.isObject() ? held.path("number") : held)
        .anyMatch(number -> number.asText().equals(sampleNumber));
  }

  /**
   * The line in place of one whose sample is not to be told any more: a cup to rinse in.
   *
   * @param place its place in the list, for a name where its own tells the sample
   */
  public static ObjectNode emptied(ObjectNode line, String sampleNumber, int place) {
    String name = line.path("cup").asText();
    return EventJson.mapper()
        .createObjectNode()
        .put("cup", name.contains(sampleNumber) ? "forgotten-" + (place + 1) : name)
        .put("rinse", true);
  }

  /** Its name with what it holds: {@code cup 2 (sample S-1)}. */
  public String words() {
    return "cup %s (%s)".formatted(name, holds);
  }
}
