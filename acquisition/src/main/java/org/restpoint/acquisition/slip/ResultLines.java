package org.restpoint.acquisition.slip;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectReader;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Result;

/**
 * Results among lines of JSON, as {@code tell --wait}, {@code replay} and {@code records --as
 * jsonl} print them: a result by itself or as the outcome of an answer. All other lines are passed
 * over.
 */
public final class ResultLines {

  /** Fields that every result has. */
  private static final List<String> ALWAYS =
      List.of(
          "id",
          "revision",
          "station",
          "probe",
          "time",
          "outcome",
          "readings",
          "elapsedSeconds",
          "rule",
          "forecast",
          "quality",
          "flags",
          "reasons",
          "caution");

  /** A line of a later version may know more than this one needs. */
  private static final ObjectReader READER =
      EventJson.mapper()
          .readerFor(Result.class)
          .without(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);

  private ResultLines() {}

  /**
   * The last result, whatever its outcome: one before it is of another sample.
   *
   * @param id whose; empty for any
   * @throws IllegalArgumentException when the last one lacks something or cannot be read
   */
  public static Optional<Result> last(Stream<String> lines, Optional<String> id) {
    return lines
        .map(ResultLines::object)
        .map(line -> line.path("event").isMissingNode() ? line.path("outcome") : line)
        .filter(object -> object.path("event").asText().equals("result"))
        .filter(object -> id.isEmpty() || id.get().equals(object.path("id").asText()))
        .reduce((earlier, later) -> later)
        .map(ResultLines::result);
  }

  /** A result of a journal or of a line. */
  public static Result read(String json) {
    return result(object(json));
  }

  private static JsonNode object(String line) {
    try {
      return EventJson.mapper().readTree(line);
    } catch (JsonProcessingException e) {
      return EventJson.mapper().missingNode();
    }
  }

  private static Result result(JsonNode object) {
    List<String> missing = ALWAYS.stream().filter(field -> !object.hasNonNull(field)).toList();
    if (!missing.isEmpty()) {
      throw new IllegalArgumentException(
          "the result %s lacks %s"
              .formatted(object.path("id").asText(), String.join(", ", missing)));
    }
    try {
      return READER.readValue(object);
    } catch (IOException e) {
      throw new IllegalArgumentException(
          "the result %s is not one that this version reads: %s"
              .formatted(object.path("id").asText(), e.getMessage()),
          e);
    }
  }
}
