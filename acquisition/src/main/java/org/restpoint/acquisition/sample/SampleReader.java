package org.restpoint.acquisition.sample;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.config.file.Spelling;

/**
 * Reads what is told of a sample: its number and any of the other fields. A field that is given as
 * an empty text is to be removed from the record. Refuses, with a {@link SampleException} that
 * tells all mistakes at once, a field that records do not have, a value that a field does not take,
 * a missing number, depths in the wrong order, and half a position: one is told and removed as a
 * whole.
 */
public final class SampleReader {

  private static final int MOST_SHOWN = 60;

  private SampleReader() {}

  /** What is told, in the order of the fields and in the form in which records keep it. */
  public static ObjectNode read(ObjectNode told) {
    List<String> problems = new ArrayList<>();
    told.fieldNames().forEachRemaining(key -> unknown(key).ifPresent(problems::add));
    ObjectNode read = EventJson.mapper().createObjectNode();
    for (SampleField field : SampleField.values()) {
      Optional<JsonNode> value = Optional.ofNullable(told.get(field.key()));
      if (value.isEmpty()) {
        if (field == SampleField.NUMBER) {
          problems.add("number is missing: expected the number of the sample");
        }
        continue;
      }
      Optional<JsonNode> kept =
          isEmpty(value.get()) && field != SampleField.NUMBER
              ? value
              : field.form().read(value.get());
      kept.ifPresentOrElse(
          good -> read.set(field.key(), good), () -> problems.add(wrong(field, value.get())));
    }
    Sample.depthsInDisorder(read).ifPresent(problems::add);
    halfPosition(told).ifPresent(problems::add);
    if (!problems.isEmpty()) {
      throw new SampleException(problems);
    }
    return read;
  }

  /** The same out of pairs of texts, where numbers, yes and no are texts as well. */
  public static ObjectNode read(Map<String, String> pairs) {
    ObjectNode told = EventJson.mapper().createObjectNode();
    pairs.forEach(
        (key, text) ->
            told.set(
                key,
                SampleField.of(key)
                    .map(field -> field.form().ofText(text.strip()))
                    .orElseGet(() -> TextNode.valueOf(text))));
    return read(told);
  }

  private static Optional<String> halfPosition(ObjectNode told) {
    Optional<JsonNode> latitude = Optional.ofNullable(told.get(SampleField.LATITUDE.key()));
    Optional<JsonNode> longitude = Optional.ofNullable(told.get(SampleField.LONGITUDE.key()));
    boolean whole =
        latitude.map(SampleReader::isEmpty).equals(longitude.map(SampleReader::isEmpty));
    return whole
        ? Optional.empty()
        : Optional.of("latitude, longitude: expected both or neither; found one of them");
  }

  /** Whether a value says that a field is to be removed. */
  static boolean isEmpty(JsonNode value) {
    return value.isTextual() && value.textValue().isEmpty();
  }

  /** What is wrong with the name of a field, if anything is. */
  public static Optional<String> unknown(String key) {
    if (SampleField.of(key).isPresent()) {
      return Optional.empty();
    }
    return Optional.of(
        "%s is no field of a sample; %s"
            .formatted(
                shown(key),
                Spelling.nearest(key, SampleField.keys())
                    .map("did you mean %s?"::formatted)
                    .orElseGet(() -> "expected " + String.join(", ", SampleField.keys()))));
  }

  private static String wrong(SampleField field, JsonNode value) {
    return "%s: expected %s; found %s"
        .formatted(field.key(), field.form().expected(), shown(value.toString()));
  }

  private static String shown(String found) {
    return found.length() <= MOST_SHOWN ? found : found.substring(0, MOST_SHOWN) + " ...";
  }
}
