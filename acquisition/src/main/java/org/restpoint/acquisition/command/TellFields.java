package org.restpoint.acquisition.command;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.sample.SampleField;
import org.restpoint.acquisition.sample.SampleReader;

/** What an instruction needs, as it is written at a terminal: pairs of texts. */
final class TellFields {

  private static final int MOST_DIGITS = 9;

  private static final Set<String> WHOLE = Set.of("minutes", "days");

  private static final Set<String> FLAGS = Set.of("private", "skip");

  private TellFields() {}

  /**
   * Puts the pairs into an instruction. Those of {@code sample} are the fields of the record, and
   * so are fields of a record beside the sample's number in {@code measure}; everywhere else
   * minutes and days are numbers, private and skip are true or false, a sample in braces is a
   * record, and all else is text.
   */
  static ObjectNode put(ObjectNode instruction, Map<String, String> pairs) {
    String word = instruction.path("do").asText();
    if (word.equals("sample")) {
      return instruction.set("sample", SampleReader.read(pairs));
    }
    pairs.forEach((key, text) -> instruction.set(key, value(key, text)));
    Map<String, String> record = word.equals("measure") ? ofRecord(pairs) : Map.of();
    if (record.size() > 1) {
      instruction.remove(record.keySet());
      instruction.set("sample", SampleReader.read(record));
    }
    return instruction;
  }

  /** The sample's number and the fields of its record that are no fields of the instruction. */
  private static Map<String, String> ofRecord(Map<String, String> pairs) {
    Map<String, String> record = new LinkedHashMap<>();
    Optional.ofNullable(pairs.get("sample")).ifPresent(number -> record.put("number", number));
    pairs.forEach(
        (key, text) -> {
          if (SampleField.of(key).isPresent() && !key.equals("recipe")) {
            record.put(key, text);
          }
        });
    return record;
  }

  private static JsonNode value(String key, String text) {
    if (WHOLE.contains(key) && text.matches("\\d{1,%d}".formatted(MOST_DIGITS))) {
      return EventJson.mapper().getNodeFactory().numberNode(Integer.parseInt(text));
    }
    if (FLAGS.contains(key) && text.matches("true|false")) {
      return BooleanNode.valueOf(text.equals("true"));
    }
    if (key.equals("sample") && text.startsWith("{")) {
      try {
        return EventJson.mapper().readTree(text);
      } catch (JsonProcessingException e) {
        return TextNode.valueOf(text);
      }
    }
    return TextNode.valueOf(text);
  }
}
