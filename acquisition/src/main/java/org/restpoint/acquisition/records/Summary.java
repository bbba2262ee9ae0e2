package org.restpoint.acquisition.records;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.restpoint.adapters.journal.EntryQuery;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.SpanQuery;

/** What a journal holds of a span of time, day by day and probe by probe. */
final class Summary {

  /** Instructions that name a sample that somebody wants a number of. */
  private static final Set<String> NAMING = Set.of("measure", "sample");

  private final ZoneId zone;
  private final SortedMap<Day, DayTally> days = new TreeMap<>();
  private final SampleFates samples = new SampleFates();

  private Summary(ZoneId zone) {
    this.zone = zone;
  }

  static Summary of(JournalReader journal, SpanQuery span, ZoneId zone) {
    Summary summary = new Summary(zone);
    journal.instructions(
        span,
        kept ->
            summary.instruction(
                ResultQuery.parsed(kept.json()), summary.day(kept.time(), kept.probe())));
    ResultQuery.of(span)
        .latest()
        .each(
            journal,
            entry ->
                summary.result(
                    ResultQuery.parsed(entry), summary.day(entry.time(), entry.probe())));
    journal.entries(
        new EntryQuery(Optional.of("calibration"), span),
        entry ->
            summary
                .tally(summary.day(entry.time(), entry.probe()))
                .standard(ResultQuery.parsed(entry)));
    return summary;
  }

  /** The tallies in the order of days and probes. */
  SortedMap<Day, DayTally> days() {
    return days;
  }

  SampleFates samples() {
    return samples;
  }

  private void instruction(JsonNode instruction, Day day) {
    String word = instruction.path("do").asText();
    if (NAMING.contains(word)) {
      expect(instruction.path("sample"), day);
    } else if (word.equals("batch")) {
      instruction.path("cups").forEach(cup -> expect(cup.path("sample"), day));
    }
  }

  private void expect(JsonNode sample, Day day) {
    samples.expect(sample.isTextual() ? sample.asText() : sample.path("number").asText(), day);
  }

  private void result(JsonNode result, Day day) {
    tally(day).result(result);
    samples.result(result, day);
  }

  private DayTally tally(Day day) {
    return days.computeIfAbsent(day, any -> new DayTally());
  }

  private Day day(Instant time, String probe) {
    return new Day(time.atZone(zone).toLocalDate(), probe);
  }
}
