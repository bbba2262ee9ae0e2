package org.restpoint.acquisition.station;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.Optional;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.probe.Archive;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.acquisition.probe.Retelling;
import org.restpoint.acquisition.probe.Revision;
import org.restpoint.acquisition.sample.Merged;
import org.restpoint.acquisition.sample.Sample;
import org.restpoint.acquisition.sample.SampleException;
import org.restpoint.stability.calibration.Reason;

/**
 * Keeps the records of a station's samples. A correction says each result of its sample again, of
 * whatever probe it is.
 */
final class SampleDesk {

  private final String station;
  private final Map<String, Retelling> retellings;
  private final Output output;
  private final Archive archive;
  private final DeskAnswers answers;

  /**
   * A desk without a record of its own: all are in the archive.
   *
   * @param retellings how the results of each electrode are told again, by its name
   */
  SampleDesk(String station, Map<String, Retelling> retellings, Output output, Archive archive) {
    this.station = station;
    this.retellings = Map.copyOf(retellings);
    this.output = output;
    this.archive = archive;
    this.answers = new DeskAnswers(station, output);
  }

  /**
   * Keeps what an instruction tells of a sample, if it tells anything.
   *
   * @return whether there is more to be done by the probe
   */
  boolean take(Instant given, String probe, Instruction instruction) {
    Instant time = given.truncatedTo(ChronoUnit.MILLIS);
    if (instruction.task() instanceof Instruction.KeepSample keep) {
      return record(time, probe, instruction, keep.told());
    }
    if (instruction.task() instanceof Instruction.Measure measure && !measure.confidential()) {
      Optional<ObjectNode> told = measure.sample().filter(fields -> fields.size() > 1);
      Optional<Reason> wrong = told.flatMap(fields -> keep(time, probe, fields));
      wrong.ifPresent(why -> answers.refused(time, probe, instruction, why));
      return wrong.isEmpty();
    }
    return true;
  }

  private boolean record(Instant time, String probe, Instruction instruction, ObjectNode told) {
    Optional<Reason> wrong = keep(time, probe, told);
    if (wrong.isPresent()) {
      answers.refused(time, probe, instruction, wrong.get());
    } else {
      answers.accepted(time, probe, instruction);
      Optional<SampleRecord> kept = archive.record(number(told));
      answers.done(time, probe, instruction, kept.map(Event.class::cast));
    }
    return false;
  }

  /** Keeps it, or says why not. */
  private Optional<Reason> keep(Instant time, String probe, ObjectNode told) {
    String number = number(told);
    Optional<SampleRecord> before = archive.record(number);
    Merged merged = Merged.of(before.map(SampleRecord::sample), told);
    Optional<Reason> wrong = wrong(time, merged.sample());
    if (wrong.isEmpty() && !merged.changed().isEmpty()) {
      int revision = before.map(SampleRecord::revision).orElse(0) + 1;
      String id = SampleRecord.idOf(number);
      output.event(
          new SampleRecord(id, revision, station, probe, time, merged.sample(), merged.changed()));
      Revision revisions = new Revision(archive, output);
      for (Result result : archive.resultsOf(number)) {
        Optional<Retelling> retelling = Optional.ofNullable(retellings.get(result.probe()));
        revisions.revise(
            time,
            result.id(),
            merged.because(),
            published ->
                retelling
                    .map(how -> how.of(published, merged.sample()))
                    .orElseGet(() -> published.withSample(merged.sample())));
      }
    }
    return wrong;
  }

  private static Optional<Reason> wrong(Instant now, ObjectNode record) {
    Optional<String> why;
    try {
      why = Sample.of(record).takenAfter(now);
    } catch (SampleException e) {
      why = Optional.of(String.valueOf(e.getMessage()));
    }
    return why.map(
        text ->
            new Reason(
                "sample-wrong",
                "the record of sample %s cannot be so: %s".formatted(number(record), text),
                "Mend it and send it again; what was kept before stays."));
  }

  private static String number(ObjectNode record) {
    return record.path("number").asText();
  }
}
