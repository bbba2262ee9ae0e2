package org.restpoint.acquisition.service;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.probe.Archive;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.StoredEntry;

/** What was published before: what still waits for its commit, then what the journal keeps. */
final class JournalArchive implements Archive {

  private final Journal journal;
  private final Outgoing outgoing;

  JournalArchive(Journal journal, Outgoing outgoing) {
    this.journal = journal;
    this.outgoing = outgoing;
  }

  @Override
  public Optional<Result> result(String id) {
    return outgoing
        .result(id)
        .or(() -> journal.entry(id).map(StoredEntry::json).map(JournalArchive::read));
  }

  @Override
  public Optional<Result> latestOfSample(String probe, String number, Instant from) {
    Optional<Result> waiting =
        outgoing.results().stream()
            .filter(result -> Archive.isOfSample(result, probe, number, from))
            .max(Comparator.comparing(Result::time));
    return waiting.or(
        () ->
            journal.latest("result", probe, from, "\"number\":" + EventJson.write(number)).stream()
                .flatMap(entry -> result(entry.id()).stream())
                .filter(result -> Archive.isOfSample(result, probe, number, from))
                .findFirst());
  }

  private static Result read(String json) {
    try {
      return EventJson.mapper().readValue(json, Result.class);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the journal keeps results of our own", e);
    }
  }
}
