package org.restpoint.acquisition.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Results for a map, held to RFC 7946. */
class GeoJsonWriterTest {

  @TempDir private Path folder;

  private JsonNode collection(String... samples) {
    BenchJournal journal = new BenchJournal(folder);
    int number = 0;
    for (String sample : samples) {
      number++;
      journal.number("r-" + number, 1, "2026-04-02T14:00:0" + number + "Z", "20.5", sample);
    }
    if (number > 0) {
      journal.number("r-1", 2, "2026-04-02T14:00:01Z", "21.0", samples[0]);
    }
    JsonNode collection =
        ResultQuery.parsed(
            journal.written(
                (reader, out) -> new GeoJsonWriter(reader, out).write(BenchJournal.ALL)));
    assertThat(collection.path("type").asText()).isEqualTo("FeatureCollection");
    assertThat(collection.path("features").isArray()).isTrue();
    assertThat(collection.path("features"))
        .allSatisfy(
            feature -> {
              assertThat(feature.path("type").asText()).isEqualTo("Feature");
              assertThat(feature.has("geometry")).isTrue();
              assertThat(feature.path("properties").isObject()).isTrue();
            });
    return collection;
  }

  @Test
  void aResultIsAPointWithLongitudeBeforeLatitude() {
    JsonNode features =
        collection(
                "{\"number\":\"S-1\",\"kind\":\"soil\",\"grower\":\"Å\",\"latitude\":44.1234,\"longitude\":-93.5678}",
                "{\"number\":\"S-2\"}")
            .path("features");
    assertThat(features).hasSize(2);
    JsonNode first = features.get(0);
    assertThat(first.path("geometry"))
        .hasToString("{\"type\":\"Point\",\"coordinates\":[-93.5678,44.1234]}");
    JsonNode properties = first.path("properties");
    assertThat(first.path("id").asText()).isEqualTo("r-1");
    assertThat(properties.path("revision").isInt()).isTrue();
    assertThat(properties.path("revision").asInt()).isEqualTo(2);
    assertThat(properties.path("value").doubleValue()).isEqualTo(21.0);
    assertThat(properties.path("relation").asText()).isEqualTo("=");
    assertThat(properties.path("sampleNumber").asText()).isEqualTo("S-1");
    assertThat(properties.path("sampleKind").asText()).isEqualTo("soil");
    assertThat(properties.path("kind").asText()).isEqualTo("solution as measured");
    assertThat(properties.path("grower").asText()).isEqualTo("Å");
    assertThat(features.get(1).path("geometry").isNull()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"latitude\":44}",
        "{\"latitude\":\"44\",\"longitude\":\"-93\"}",
        "{\"latitude\":-93.5,\"longitude\":44}",
        "{\"latitude\":44,\"longitude\":181}"
      })
  void whatIsNoPositionIsNone(String sample) {
    assertThat(collection(sample).at("/features/0/geometry").isNull()).isTrue();
  }

  @Test
  void propertiesAreTextsNumbersAndTruthsAlone() {
    List<JsonNode> values = new ArrayList<>();
    collection("{\"number\":\"S-1\",\"cooled\":true,\"more\":{\"a\":[1]}}")
        .at("/features/0/properties")
        .forEach(values::add);
    assertThat(values).hasSizeGreaterThan(10).allMatch(JsonNode::isValueNode);
  }

  @Test
  void anEmptyCollectionIsOne() {
    assertThat(collection().path("features")).isEmpty();
  }
}
