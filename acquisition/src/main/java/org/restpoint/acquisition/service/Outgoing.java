package org.restpoint.acquisition.service;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.BatchSummary;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.adapters.journal.JournalBatch;
import org.restpoint.adapters.journal.OutgoingMessage;
import org.restpoint.adapters.journal.StoredEntry;
import org.restpoint.adapters.journal.StoredInstruction;
import org.restpoint.adapters.journal.StoredReading;
import org.restpoint.stability.reading.Reading;

/** What has come about since the last commit; used by the engine's thread alone. */
final class Outgoing implements Output {

  /** Readings alone wait this long for a commit, to spare the disk. */
  private static final Duration READINGS_WAIT = Duration.ofSeconds(1);

  private static final int MOST_READINGS = 10_000;

  private final Topics topics;
  private final EngineListener listener;
  private final List<StoredReading> readings = new ArrayList<>();
  private final List<StoredEntry> entries = new ArrayList<>();
  private final List<StoredInstruction> instructions = new ArrayList<>();
  private final List<OutgoingMessage> messages = new ArrayList<>();
  private final List<Event> events = new ArrayList<>();
  private final List<Runnable> afterwards = new ArrayList<>();
  private final Set<String> changed = new LinkedHashSet<>();
  private long firstReadingNanos;

  Outgoing(Topics topics, EngineListener listener) {
    this.topics = topics;
    this.listener = listener;
  }

  void keep(String probe, Reading reading) {
    if (readings.isEmpty()) {
      firstReadingNanos = System.nanoTime();
    }
    readings.add(new StoredReading(probe, reading));
  }

  void keep(StoredInstruction instruction) {
    instructions.add(instruction);
    changed.add(instruction.probe());
  }

  /** Their memories may have changed. */
  void change(Set<String> probes) {
    changed.addAll(probes);
  }

  /** Whether an instruction is among those kept since the last commit. */
  boolean keeps(String probe, String id) {
    return instructions.stream()
        .anyMatch(kept -> kept.probe().equals(probe) && kept.id().equals(id));
  }

  /** The latest revision of a result among what was said since the last commit. */
  Optional<Result> result(String id) {
    return said(Result.class)
        .filter(result -> result.id().equals(id))
        .reduce((earlier, later) -> later);
  }

  /** What was said of one kind since the last commit, in order. */
  <T extends Event> Stream<T> said(Class<T> kind) {
    return events.stream().filter(kind::isInstance).map(kind::cast);
  }

  /** To be run once all this is on disk. */
  void afterwards(Runnable action) {
    afterwards.add(action);
  }

  @Override
  public void event(Event event) {
    String json = EventJson.write(event);
    if (Topics.passing(event)) {
      listener.passing(topics.of(event), json);
      return;
    }
    events.add(event);
    changed.add(event.probe());
    entry(event, json);
    if (!Topics.unpublished(event)) {
      messages.add(new OutgoingMessage(topics.of(event), Topics.retained(event), json));
    }
  }

  private void entry(Event event, String json) {
    if (event instanceof Result result) {
      entries.add(stored(event, result.id(), result.revision(), json));
    } else if (event instanceof Calibration calibration) {
      entries.add(stored(event, calibration.id(), calibration.revision(), json));
    } else if (event instanceof Notice notice) {
      entries.add(stored(event, notice.id(), 1, json));
    } else if (event instanceof SampleRecord record) {
      entries.add(stored(event, record.id(), record.revision(), json));
    } else if (event instanceof BatchSummary batch) {
      entries.add(stored(event, batch.id(), 1, json));
    }
  }

  private static StoredEntry stored(Event event, String id, int revision, String json) {
    return new StoredEntry(id, revision, Topics.kind(event), event.probe(), event.time(), json);
  }

  @Override
  public void answer(Answer answer) {
    messages.add(
        new OutgoingMessage(topics.answer(answer.probe()), false, EventJson.write(answer)));
  }

  /** At once and past the journal: whoever is not there to hear it asks again. */
  @Override
  public void confide(Answer answer) {
    listener.passing(topics.answer(answer.probe()), EventJson.write(answer));
  }

  /** Whether something waits that people wait for. */
  boolean isUrgent() {
    return !messages.isEmpty() || !instructions.isEmpty() || !afterwards.isEmpty();
  }

  /** Whether readings have waited long enough. */
  boolean isFull() {
    return !readings.isEmpty()
        && (readings.size() >= MOST_READINGS
            || System.nanoTime() - firstReadingNanos >= READINGS_WAIT.toNanos());
  }

  /** The probes whose memory may have changed. */
  Set<String> changedProbes() {
    return changed;
  }

  JournalBatch batch(Map<String, String> memories) {
    return new JournalBatch(readings, entries, instructions, memories, messages);
  }

  /** All of it is on disk: tell, and begin anew. */
  void committed() {
    boolean owed = !messages.isEmpty();
    events.forEach(listener::happened);
    afterwards.forEach(Runnable::run);
    readings.clear();
    entries.clear();
    instructions.clear();
    messages.clear();
    events.clear();
    afterwards.clear();
    changed.clear();
    if (owed) {
      listener.committed();
    }
  }
}
