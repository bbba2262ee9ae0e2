package org.restpoint.acquisition.schema;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.restpoint.acquisition.event.EventJson;

/** The published schemas, as they lie in the jar. */
final class Schemas {

  /** Every payload by the last word of its topic. */
  static final List<String> PAYLOADS =
      List.of(
          "online",
          "raw",
          "settling",
          "result",
          "calibration",
          "state",
          "notice",
          "batch",
          "instruction",
          "answer");

  private static final String FOLDER = "org/restpoint/acquisition/schema/";
  private static final SchemaRegistry REGISTRY =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);

  private Schemas() {}

  /** What a schema has against a value; empty when it is valid. */
  static List<String> problems(String payload, JsonNode value) {
    return REGISTRY
        .getSchema(SchemaLocation.of("classpath:" + FOLDER + payload + ".json"))
        .validate(value)
        .stream()
        .map(problem -> problem.getInstanceLocation() + " " + problem.getMessage())
        .toList();
  }

  static List<String> problems(String payload, String json) {
    return problems(payload, parse(json));
  }

  /** The payload whose schema an object of ours has to meet. */
  static String payload(JsonNode object) {
    String event = object.path("event").asText("answer");
    return event.equals("reading") ? "raw" : event;
  }

  static JsonNode schema(String file) {
    return parse(text(file));
  }

  static String text(String file) {
    try (InputStream in =
        Objects.requireNonNull(
            Schemas.class.getClassLoader().getResourceAsStream(FOLDER + file), file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static JsonNode parse(String json) {
    try {
      return EventJson.mapper().readTree(json);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }
}
