package org.restpoint.adapters.mqtt;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.reading.Reading;

/** A payload that is one JSON text (RFC 8259), nothing after it and no name twice in an object. */
final class JsonText {

  private static final ObjectMapper STRICT =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private JsonText() {}

  static Reading read(Instant time, byte[] payload, MqttReadingFormat.JsonFields fields)
      throws RejectedMessageException {
    JsonNode tree = parse(payload);
    OptionalDouble millivolts = number(tree, fields.millivolts());
    OptionalDouble celsius = number(tree, fields.celsius());
    if (fields.millivolts().isPresent() && millivolts.isEmpty()) {
      throw new RejectedMessageException("there is nothing at " + fields.millivolts().get());
    }
    if (millivolts.isEmpty() && celsius.isEmpty()) {
      throw new RejectedMessageException("there is nothing at " + fields.celsius().orElse(""));
    }
    try {
      return new Reading(time, millivolts, celsius);
    } catch (IllegalArgumentException e) {
      throw new RejectedMessageException(String.valueOf(e.getMessage()));
    }
  }

  private static JsonNode parse(byte[] payload) throws RejectedMessageException {
    try {
      JsonNode tree = STRICT.readTree(payload);
      if (tree == null || tree.isMissingNode()) {
        throw new RejectedMessageException("it is empty");
      }
      return tree;
    } catch (JacksonException e) {
      JsonLocation at = e.getLocation();
      throw new RejectedMessageException(
          at == null
              ? "it is not JSON, or nested too deeply"
              : "it is not strict JSON (line %d, column %d)"
                  .formatted(at.getLineNr(), at.getColumnNr()));
    } catch (IOException e) {
      throw new RejectedMessageException("it cannot be read as JSON");
    }
  }

  /** Nothing, and an explicit null, are an absent value; anything else must be a number. */
  private static OptionalDouble number(JsonNode tree, Optional<String> pointer)
      throws RejectedMessageException {
    if (pointer.isEmpty()) {
      return OptionalDouble.empty();
    }
    JsonNode found = tree.at(JsonPointer.compile(pointer.get()));
    if (found.isMissingNode() || found.isNull()) {
      return OptionalDouble.empty();
    }
    if (!found.isNumber()) {
      throw new RejectedMessageException(
          "expected a number at %s, found %s"
              .formatted(
                  pointer.get(), article(found.getNodeType().name().toLowerCase(Locale.ROOT))));
    }
    return OptionalDouble.of(found.doubleValue());
  }

  private static String article(String kind) {
    return ("aeiou".indexOf(kind.charAt(0)) < 0 ? "a " : "an ") + kind;
  }
}
