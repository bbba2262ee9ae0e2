package org.restpoint.acquisition.sample;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.SampleRecord.Change;

/**
 * A record of a sample after more was told of it: a field that was told replaces the one that was
 * kept, one told as an empty text goes, all others stay.
 *
 * @param sample the whole record, its fields in their order
 * @param changed the fields that are otherwise than before
 */
public record Merged(ObjectNode sample, List<Change> changed) {

  public Merged {
    changed = List.copyOf(changed);
  }

  /** Merges what was told, as {@link SampleReader} reads it, into what was kept. */
  public static Merged of(Optional<ObjectNode> kept, ObjectNode told) {
    ObjectNode sample = EventJson.mapper().createObjectNode();
    List<Change> changed = new ArrayList<>();
    for (String key : SampleField.keys()) {
      Optional<JsonNode> before = kept.map(record -> record.get(key));
      Optional<JsonNode> after =
          told.has(key)
              ? Optional.of(told.get(key)).filter(value -> !SampleReader.isEmpty(value))
              : before;
      after.ifPresent(value -> sample.set(key, value));
      if (!after.equals(before)) {
        changed.add(new Change(key, before, after));
      }
    }
    return new Merged(sample, changed);
  }

  /** Why results of the sample are said again, in plain words. */
  public String because() {
    return "the record of sample %s was %s: %s"
        .formatted(
            sample.path(SampleField.NUMBER.key()).asText(),
            changed.stream().anyMatch(change -> change.before().isPresent())
                ? "corrected"
                : "filled in",
            changed.stream()
                .map(Change::field)
                .filter(field -> !field.equals(SampleField.NUMBER.key()))
                .collect(Collectors.joining(", ")));
  }
}
