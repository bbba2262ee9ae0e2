package org.restpoint.adapters.mqtt;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.Locale;

/**
 * A payload that is one JSON text (RFC 8259), nothing after it and no name twice in an object.
 * Numbers keep all their digits.
 */
final class StrictJson {

  private static final ObjectMapper STRICT =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .build();

  private StrictJson() {}

  static JsonNode parse(byte[] payload) throws RejectedMessageException {
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
    } catch (NumberFormatException e) {
      // The parser lets it through: an exponent that a BigDecimal cannot hold.
      throw new RejectedMessageException("it has a number with too large an exponent");
    } catch (IOException e) {
      throw new RejectedMessageException("it cannot be read as JSON");
    }
  }

  /** What a node is, for a person: {@code a string}, {@code an object}. */
  static String kind(JsonNode node) {
    String kind = node.getNodeType().name().toLowerCase(Locale.ROOT);
    return ("aeiou".indexOf(kind.charAt(0)) < 0 ? "a " : "an ") + kind;
  }
}
