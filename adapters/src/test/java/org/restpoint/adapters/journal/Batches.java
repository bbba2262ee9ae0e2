package org.restpoint.adapters.journal;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.restpoint.stability.reading.Reading;

/** Small batches, entries and readings for the tests; all their content is invented. */
final class Batches {

  static final Instant NOON = Instant.parse("2026-04-02T12:00:00Z");

  private Batches() {}

  static StoredReading reading(String probe, long secondsAfterNoon, double millivolts) {
    return new StoredReading(
        probe, Reading.of(NOON.plusSeconds(secondsAfterNoon), millivolts, 21.5));
  }

  static StoredEntry entry(String id, int revision, long secondsAfterNoon) {
    return new StoredEntry(
        id,
        revision,
        "result",
        "no3-a",
        NOON.plusSeconds(secondsAfterNoon),
        "{\"id\":\"%s\",\"revision\":%d}".formatted(id, revision));
  }

  static StoredInstruction instruction(String probe, String id) {
    return new StoredInstruction(id, probe, NOON, "{\"do\":\"measure\"}");
  }

  static JournalBatch of(StoredEntry... entries) {
    return new JournalBatch(List.of(), List.of(entries), List.of(), Map.of(), List.of());
  }

  static JournalBatch of(OutgoingMessage... messages) {
    return new JournalBatch(List.of(), List.of(), List.of(), Map.of(), List.of(messages));
  }

  static JournalBatch of(StoredInstruction... instructions) {
    return new JournalBatch(List.of(), List.of(), List.of(instructions), Map.of(), List.of());
  }

  static OutgoingMessage message(String topic, String payload) {
    return new OutgoingMessage(topic, false, payload);
  }
}
