package org.restpoint.acquisition.forgetting;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import org.restpoint.adapters.journal.EntryQuery;
import org.restpoint.adapters.journal.Forgetting.ReadingSpan;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.StoredEntry;

/**
 * When electrodes stood in a sample: from the instruction to read it until they were told to stand
 * elsewhere. Where cups are changed without a word, until the next reading began, and where that
 * was of a standard, whose beginning is not kept, until the sample's own rest.
 */
final class Attempts {

  /** Longer than any electrode stands in a sample. */
  private static final Instant OPEN = Instant.parse("2200-01-01T00:00:00Z");

  /** Few entries, or none, stand between a reading and the next one. */
  private static final int LOOKED_AT = 500;

  private final Journal journal;
  private final ToldInstructions told;
  private final Set<String> results;
  private final List<ReadingSpan> spans = new ArrayList<>();
  private final Set<String> standing = new TreeSet<>();

  Attempts(Journal journal, ToldInstructions told, List<StoredEntry> latest, Set<String> results) {
    this.journal = journal;
    this.told = told;
    this.results = results;
    latest.forEach(this::ended);
    told.readings().forEach(this::begun);
  }

  /** All of them. */
  List<ReadingSpan> spans() {
    return List.copyOf(spans);
  }

  /** The probes whose electrodes stand in the sample still, for all that was told. */
  Set<String> standing() {
    return Set.copyOf(standing);
  }

  private void ended(StoredEntry result) {
    JsonNode json = Json.read(result.json());
    if (json.path("readings").asLong() > 0) {
      add(result.probe(), start(result.time(), json), result.time());
    }
  }

  private void begun(ToldInstructions.Told reading) {
    boolean known =
        spans.stream()
            .anyMatch(
                span ->
                    span.probe().equals(reading.probe())
                        && !reading.time().isBefore(span.from())
                        && !reading.time().isAfter(span.to()));
    if (!known && !isRefused(reading)) {
      add(reading.probe(), reading.time(), reading.time());
    }
  }

  /** What is refused is told of at the same instant. */
  private boolean isRefused(ToldInstructions.Told reading) {
    List<StoredEntry> then = new ArrayList<>();
    journal.entries(
        EntryQuery.of(
            Optional.empty(),
            Optional.of(reading.probe()),
            Optional.of(reading.time()),
            Optional.of(reading.time().plusMillis(1)),
            OptionalInt.empty()),
        then::add);
    return then.stream()
        .anyMatch(entry -> entry.kind().equals("result") || entry.kind().equals("notice"));
  }

  private void add(String probe, Instant from, Instant rest) {
    Optional<Instant> moved = told.movedAfter(probe, rest);
    Optional<Instant> next = nextReading(probe, rest, moved.orElse(OPEN));
    Instant to = next.or(() -> moved).orElse(OPEN);
    spans.add(new ReadingSpan(probe, from, to));
    if (to.equals(OPEN)) {
      standing.add(probe);
    }
  }

  /** When a reading began that no instruction tells of. */
  private Optional<Instant> nextReading(String probe, Instant rest, Instant before) {
    List<Instant> began = new ArrayList<>();
    journal.entries(
        EntryQuery.of(
            Optional.empty(),
            Optional.of(probe),
            Optional.of(rest.plusMillis(1)),
            Optional.of(before),
            OptionalInt.of(LOOKED_AT)),
        entry -> {
          if (entry.kind().equals("calibration")) {
            began.add(rest);
          } else if (entry.kind().equals("result") && !results.contains(entry.id())) {
            JsonNode json = Json.read(entry.json());
            if (json.path("readings").asLong() > 0) {
              began.add(start(entry.time(), json));
            }
          }
        });
    return began.stream().filter(start -> !start.isBefore(rest)).findFirst();
  }

  private static Instant start(Instant end, JsonNode result) {
    return end.minus(
        Duration.ofMillis((long) Math.ceil(result.path("elapsedSeconds").asDouble() * 1e3)));
  }
}
