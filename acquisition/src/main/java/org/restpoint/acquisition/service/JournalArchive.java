package org.restpoint.acquisition.service;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.acquisition.forgetting.Traces;
import org.restpoint.acquisition.probe.Archive;
import org.restpoint.acquisition.probe.Erased;
import org.restpoint.adapters.journal.Forgetting;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.JournalException;
import org.restpoint.adapters.journal.StoredEntry;

/** What was published before: what still waits for its commit, then what the journal keeps. */
final class JournalArchive implements Archive {

  private final Journal journal;
  private final Outgoing outgoing;
  private final Runnable commit;
  private boolean clean = true;

  /**
   * An archive.
   *
   * @param commit brings to disk what still waits for its commit
   */
  JournalArchive(Journal journal, Outgoing outgoing, Runnable commit) {
    this.journal = journal;
    this.outgoing = outgoing;
    this.commit = commit;
  }

  /**
   * Takes a sample out of the journal. Where bytes were left the last time, because somebody read
   * the journal then, the next asking takes them out whatever it asks for.
   */
  @Override
  public Erased forget(String sampleNumber) {
    commit.run();
    try {
      return erase(sampleNumber);
    } catch (JournalException e) {
      return Erased.failed(String.valueOf(e.getMessage()));
    }
  }

  private Erased erase(String sampleNumber) {
    Traces traces = Traces.of(journal, sampleNumber);
    if (traces.isNothing() && clean) {
      return Erased.nothing();
    }
    boolean before = clean;
    Forgetting.Forgotten gone = journal.forget(traces.forgetting());
    clean = gone.clean();
    return new Erased(
        traces.results(),
        gone.readings(),
        traces.instructions(),
        traces.others() + (before ? 0 : 1),
        traces.standing(),
        clean,
        Optional.empty());
  }

  @Override
  public Optional<Result> result(String id) {
    return outgoing
        .result(id)
        .or(
            () ->
                journal
                    .entry(id)
                    .filter(entry -> entry.kind().equals("result"))
                    .map(entry -> read(entry, Result.class)));
  }

  @Override
  public List<Result> resultsOf(String sampleNumber) {
    Map<String, Result> latest = new LinkedHashMap<>();
    journal
        .resultsOfSample(sampleNumber)
        .forEach(entry -> latest.put(entry.id(), read(entry, Result.class)));
    outgoing
        .said(Result.class)
        .filter(result -> result.isOf(sampleNumber))
        .forEach(result -> latest.put(result.id(), result));
    return latest.values().stream().sorted(Comparator.comparing(Result::time)).toList();
  }

  @Override
  public Optional<SampleRecord> record(String sampleNumber) {
    String id = SampleRecord.idOf(sampleNumber);
    return outgoing
        .said(SampleRecord.class)
        .filter(record -> record.id().equals(id))
        .reduce((earlier, later) -> later)
        .or(() -> journal.entry(id).map(entry -> read(entry, SampleRecord.class)));
  }

  private static <T> T read(StoredEntry entry, Class<T> kind) {
    try {
      return EventJson.mapper().readValue(entry.json(), kind);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the journal keeps events of our own", e);
    }
  }
}
