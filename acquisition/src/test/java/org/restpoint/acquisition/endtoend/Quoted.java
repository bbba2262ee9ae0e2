package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;

/**
 * A line of the program as a page quotes it: some of its fields, numbers rounded to the decimals
 * that stand there, lists whole but of the fields of their parts only some.
 *
 * @param json what stands in the page
 */
record Quoted(JsonNode json) {

  private static final ObjectMapper EXACT =
      JsonMapper.builder()
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
          .build();

  /** The objects in a block, one after the other. */
  static List<Quoted> in(String block) {
    try (MappingIterator<JsonNode> objects = EXACT.readerFor(JsonNode.class).readValues(block)) {
      return objects.readAll().stream().map(Quoted::new).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The program's lines, with all digits of their numbers. */
  static List<JsonNode> lines(String out) {
    return out.lines().map(Quoted::exact).toList();
  }

  private static JsonNode exact(String line) {
    try {
      return EXACT.readTree(line);
    } catch (JsonProcessingException e) {
      throw new AssertionError("not JSON: " + line, e);
    }
  }

  /**
   * The line that it quotes: of the same event at the same time, of the same probe if one is named.
   */
  JsonNode lineAmong(List<JsonNode> lines) {
    List<JsonNode> found =
        lines.stream()
            .filter(line -> same("event", line) && same("time", line))
            .filter(line -> !json.has("probe") || same("probe", line))
            .toList();
    assertThat(found).as("lines like %s", json).hasSize(1);
    return found.get(0);
  }

  private boolean same(String field, JsonNode line) {
    return json.path(field).equals(line.path(field));
  }

  /** Fails unless the line says the same. */
  void assertSaidBy(JsonNode line) {
    assertSame(json, line, line.path("event").asText() + " of " + line.path("time").asText());
  }

  private static void assertSame(JsonNode quoted, JsonNode said, String where) {
    if (quoted.isObject()) {
      for (Map.Entry<String, JsonNode> field : quoted.properties()) {
        assertSame(field.getValue(), said.path(field.getKey()), where + "/" + field.getKey());
      }
    } else if (quoted.isArray()) {
      assertThat(said).as(where).hasSize(quoted.size());
      for (int i = 0; i < quoted.size(); i++) {
        assertSame(quoted.get(i), said.path(i), where + "/" + i);
      }
    } else if (quoted.isNumber()) {
      assertThat(said.isNumber()).as("%s is a number", where).isTrue();
      BigDecimal number = quoted.decimalValue();
      assertThat(said.decimalValue().setScale(number.scale(), RoundingMode.HALF_UP))
          .as(where)
          .isEqualTo(number);
    } else {
      assertThat(said).as(where).isEqualTo(quoted);
    }
  }
}
