package org.restpoint.acquisition.replay;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Progress;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.probe.KeptResults;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.acquisition.station.StationRoutine;
import org.restpoint.adapters.recording.ProbeReading;
import org.restpoint.config.station.Station;

/**
 * Runs a recording and its instructions through the routines that run live, as fast as it goes.
 *
 * <p>Readings and instructions are merged by time; at the same millisecond the reading comes first,
 * as it does live. When the recording ends, what an instruction began is given up at its deadline,
 * because no reading will come any more.
 */
public final class Replay implements Output {

  private final Station station;
  private final boolean raw;
  private final Consumer<Event> out;
  private final Consumer<String> complaints;
  private final List<Event> pending = new ArrayList<>();
  private final KeptResults kept = new KeptResults();
  private final Set<String> strangers = new TreeSet<>();

  /**
   * A replay.
   *
   * @param station the station
   * @param raw whether each reading is told too
   * @param out takes the events in the order of their times
   * @param complaints takes what could not be used, in words for a person
   */
  public Replay(Station station, boolean raw, Consumer<Event> out, Consumer<String> complaints) {
    this.station = station;
    this.raw = raw;
    this.out = out;
    this.complaints = complaints;
  }

  /**
   * Runs a recording that is written as the links say that name this very file, or in the service's
   * own form.
   *
   * @return how many rows were used and how many were not
   */
  public Counts run(Path recording, List<TimedInstruction> instructions) {
    return run(recording, RecordingPart.of(station, recording), instructions);
  }

  /**
   * Runs a recording that is written as the link of a probe says, unless it is in the service's own
   * form. Refuses, with an {@link IllegalArgumentException}, a probe that is not among {@link
   * #layouts}.
   *
   * @return how many rows were used and how many were not
   */
  public Counts run(Path recording, String probe, List<TimedInstruction> instructions) {
    return run(recording, RecordingPart.like(station, probe), instructions);
  }

  /** The probes of a station whose links say how a recording is written. */
  public static Set<String> layouts(Station station) {
    return RecordingPart.links(station).keySet();
  }

  private Counts run(
      Path recording, List<RecordingPart> parts, List<TimedInstruction> instructions) {
    StationRoutine routine = new StationRoutine(station, Map.of(), this, kept, raw);
    Deque<TimedInstruction> waiting = new ArrayDeque<>(instructions);
    long unknown = 0;
    try (RecordingRows rows = RecordingRows.open(recording, parts, complaints)) {
      boolean begun = false;
      for (Optional<ProbeReading> next = rows.next(); next.isPresent(); next = rows.next()) {
        ProbeReading row = next.get();
        Instant time = row.reading().time();
        if (!begun) {
          routine.begin(first(time, waiting));
          begun = true;
        }
        instructUpTo(time, waiting, routine);
        routine.elapse(time);
        if (!routine.reading(row.probe(), row.reading())) {
          unknown++;
          complainOf(row.probe());
        }
        flush();
      }
      if (!begun && !waiting.isEmpty()) {
        routine.begin(waiting.peek().time());
      }
      instructUpTo(Instant.MAX, waiting, routine);
      routine.conclude();
      flush();
      rows.conclude();
      return new Counts(rows.accepted() - unknown, rows.rejected() + unknown);
    }
  }

  private static Instant first(Instant row, Deque<TimedInstruction> waiting) {
    return waiting.isEmpty() || row.isBefore(waiting.peek().time()) ? row : waiting.peek().time();
  }

  private void instructUpTo(Instant end, Deque<TimedInstruction> waiting, StationRoutine routine) {
    while (!waiting.isEmpty() && waiting.peek().time().isBefore(end)) {
      TimedInstruction next = waiting.remove();
      routine.elapse(next.time());
      if (!(next.instruction().task() instanceof Instruction.Cancel)) {
        routine.passUnread(next.time(), next.probe());
      }
      routine.instruct(next.time(), next.probe(), next.instruction());
      flush();
    }
  }

  private void complainOf(String probe) {
    if (strangers.add(probe)) {
      complaints.accept(
          "the recording has readings of %s, which is not a probe of station %s (%s); they are passed over"
              .formatted(probe, station.name(), String.join(", ", station.probes().keySet())));
    }
  }

  @Override
  public void event(Event event) {
    if (event instanceof Result result) {
      kept.keep(result);
    } else if (event instanceof SampleRecord record) {
      kept.keep(record);
    }
    if (!(event instanceof Progress)) {
      pending.add(event);
    }
  }

  @Override
  public void answer(Answer answer) {
    if (answer.verdict() == Answer.Verdict.REFUSED) {
      answer
          .reasons()
          .forEach(
              why ->
                  complaints.accept(
                      "%s %s: %s was refused: %s. %s"
                          .formatted(
                              answer.time(),
                              answer.probe(),
                              answer.instruction(),
                              why.text(),
                              why.remedy())
                          .strip()));
    }
  }

  /** A private sample has no readings in a recording, and nothing of it is told here. */
  @Override
  public void confide(Answer answer) {
    complaints.accept(
        "%s %s: a private sample was read; nothing of it is kept"
            .formatted(answer.time(), answer.probe()));
  }

  /** One input may make things due at several probes: they are told in the order of their times. */
  private void flush() {
    if (pending.size() > 1) {
      pending.sort(Comparator.comparing(Replay::said));
    }
    pending.forEach(out);
    pending.clear();
  }

  /** A result that is worked out again is said then, and bears the time of its reading. */
  private static Instant said(Event event) {
    return event instanceof Result result
        ? result.revised().map(Result.Revised::time).orElse(result.time())
        : event.time();
  }

  /**
   * What became of the rows.
   *
   * @param used rows that were read
   * @param unused rows that were not
   */
  public record Counts(long used, long unused) {}
}
