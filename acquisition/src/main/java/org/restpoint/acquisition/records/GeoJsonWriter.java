package org.restpoint.acquisition.records;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.Writer;
import java.util.Map;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.StoredEntry;

/**
 * Writes results for a map: a FeatureCollection by RFC 7946 with a Feature for each result, of its
 * latest revision. The geometry is the Point where the sample was taken, longitude before latitude,
 * WGS 84; null where nobody noted it. The properties are the columns of the table and the fields of
 * the sample's record, side by side.
 */
public final class GeoJsonWriter {

  /** Names that the sample's record shares with the result. */
  private static final Map<String, String> RENAMED =
      Map.of("number", "sampleNumber", "kind", "sampleKind");

  private final JournalReader journal;
  private final ItemsOfAnArray features;

  /** Writes from an open journal; neither is closed here. */
  public GeoJsonWriter(JournalReader journal, Writer out) {
    this.journal = journal;
    this.features = new ItemsOfAnArray(out);
  }

  /** Writes the whole collection. */
  public void write(ResultQuery query) {
    features.write("{\"type\":\"FeatureCollection\",\"features\":[");
    query.latest().each(journal, entry -> features.add(feature(entry)));
    features.write("\n]}\n");
  }

  private static ObjectNode feature(StoredEntry entry) {
    JsonNode result = ResultQuery.parsed(entry);
    JsonNode sample = result.path("sample");
    ObjectNode feature = EventJson.mapper().createObjectNode();
    feature.put("type", "Feature").put("id", entry.id());
    point(feature, sample.path("latitude"), sample.path("longitude"));
    ObjectNode properties = feature.putObject("properties");
    Column.of("result").stream()
        .filter(column -> !column.name().equals("sample"))
        .forEach(column -> property(properties, column.name(), result.at(column.pointer())));
    property(properties, "role", result.at("/verification/role"));
    sample
        .properties()
        .forEach(
            field ->
                property(
                    properties,
                    RENAMED.getOrDefault(field.getKey(), field.getKey()),
                    field.getValue()));
    return feature;
  }

  private static void point(ObjectNode feature, JsonNode latitude, JsonNode longitude) {
    if (isWithin(latitude, 90) && isWithin(longitude, 180)) {
      feature
          .putObject("geometry")
          .put("type", "Point")
          .putArray("coordinates")
          .add(longitude)
          .add(latitude);
    } else {
      feature.putNull("geometry");
    }
  }

  private static boolean isWithin(JsonNode degrees, double most) {
    return degrees.isNumber() && Math.abs(degrees.doubleValue()) <= most;
  }

  /** Numbers stay numbers; lists are one text, which any program for maps can show. */
  private static void property(ObjectNode properties, String name, JsonNode value) {
    if (value.isMissingNode() || value.isNull() || properties.has(name)) {
      return;
    }
    if (value.isContainerNode()) {
      properties.put(name, Column.text(value));
    } else {
      properties.set(name, value);
    }
  }
}
