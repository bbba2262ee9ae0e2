package org.restpoint.acquisition.records;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.adapters.journal.EntryQuery;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.SpanQuery;
import org.restpoint.adapters.journal.StoredEntry;

/**
 * Which results are asked for.
 *
 * @param span whose and from when; all revisions of a result have the time of its reading
 * @param sample the number of one sample; empty for any and none
 * @param latestAlone whether of each result only the latest revision counts
 */
public record ResultQuery(SpanQuery span, Optional<String> sample, boolean latestAlone) {

  /** All results of a span with all their revisions. */
  public static ResultQuery of(SpanQuery span) {
    return new ResultQuery(span, Optional.empty(), false);
  }

  /** The same, of each result the latest revision. */
  ResultQuery latest() {
    return new ResultQuery(span, sample, true);
  }

  /** Hands them over, oldest first. */
  void each(JournalReader journal, Consumer<StoredEntry> consumer) {
    EntryQuery results = new EntryQuery(Optional.of("result"), span);
    Map<String, Integer> revised = latestAlone ? revised(journal, results) : Map.of();
    journal.entries(
        results,
        entry -> {
          boolean counts = !latestAlone || revised.getOrDefault(entry.id(), 1) == entry.revision();
          if (counts && isOfTheSample(entry)) {
            consumer.accept(entry);
          }
        });
  }

  /** The latest revision of each result that has more than one: few, however long the journal. */
  private static Map<String, Integer> revised(JournalReader journal, EntryQuery results) {
    Map<String, Integer> revised = new HashMap<>();
    journal.entries(
        results,
        entry -> {
          if (entry.revision() > 1) {
            revised.merge(entry.id(), entry.revision(), Math::max);
          }
        });
    return revised;
  }

  private boolean isOfTheSample(StoredEntry entry) {
    return sample.isEmpty() || parsed(entry).at("/sample/number").asText().equals(sample.get());
  }

  /** What an entry holds. */
  static JsonNode parsed(StoredEntry entry) {
    return parsed(entry.json());
  }

  static JsonNode parsed(String json) {
    try {
      return EventJson.mapper().readTree(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the journal keeps JSON of our own", e);
    }
  }
}
