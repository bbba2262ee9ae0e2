package org.restpoint.acquisition.station;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.restpoint.acquisition.event.Forgotten;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.probe.Archive;
import org.restpoint.acquisition.probe.Erased;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.stability.calibration.Reason;

/**
 * Forgets samples: first the routines of all probes, then the archive. No answer names the sample.
 */
final class ForgetDesk {

  private static final String OUT_OF_OUR_HANDS =
      "What was published before is out of our hands: with subscribers, in the broker's own files,"
          + " in logs, backups, exports and slips. Delete it there.";

  private static final String NOT_CLEAN =
      "Bytes of it are left in the journal's files, because somebody reads the journal or the disk"
          + " has no room for a second copy of it: end what reads it, make room, and tell it again. ";

  private final String station;
  private final Map<String, BatchRoutine> routines;
  private final Archive archive;
  private final DeskAnswers answers;

  ForgetDesk(String station, Map<String, BatchRoutine> routines, Output output, Archive archive) {
    this.station = station;
    this.routines = routines;
    this.archive = archive;
    this.answers = new DeskAnswers(station, output);
  }

  /** Forgets a sample, or says why not; where none is named nothing is done. */
  void take(Instant given, String probe, Instruction instruction, Optional<String> sample) {
    Instant time = given.truncatedTo(ChronoUnit.MILLIS);
    sample.ifPresent(
        number -> {
          Optional<Reason> busy = busy(number);
          if (busy.isPresent()) {
            answers.refused(time, probe, instruction, busy.get());
          } else {
            forget(time, probe, instruction, number);
          }
        });
  }

  private Optional<Reason> busy(String number) {
    return routines.entrySet().stream()
        .filter(each -> each.getValue().isReading(number))
        .map(
            each ->
                new Reason(
                    "busy",
                    "probe %s is reading it at this moment".formatted(each.getKey()),
                    "Wait until it is done, or cancel it."))
        .findFirst();
  }

  private void forget(Instant time, String probe, Instruction instruction, String number) {
    List<String> results = archive.resultsOf(number).stream().map(Result::id).toList();
    boolean listed = false;
    for (BatchRoutine routine : routines.values()) {
      listed |= routine.forget(time, number, results);
    }
    Erased erased = archive.forget(number);
    if (erased.trouble().isPresent()) {
      answers.refused(time, probe, instruction, failed(erased.trouble().get()));
      return;
    }
    if (erased.isNothing() && !listed) {
      answers.refused(time, probe, instruction, unknown());
      return;
    }
    erased.standing().forEach(name -> withhold(name));
    answers.accepted(time, probe, instruction);
    answers.done(time, probe, instruction, Optional.of(forgotten(time, probe, erased)));
  }

  private void withhold(String name) {
    Optional.ofNullable(routines.get(name)).ifPresent(BatchRoutine::withhold);
  }

  private static Reason failed(String why) {
    return new Reason(
        "not-forgotten",
        "what is kept of the sample could not be taken out: " + why,
        "Mend that and tell it again.");
  }

  private static Reason unknown() {
    return new Reason(
        "sample-unknown",
        "nothing is kept of a sample with this number",
        "Look whether the number is written as it was told.");
  }

  private Forgotten forgotten(Instant time, String probe, Erased erased) {
    String text =
        "%s, %s and what stood in %s of the sample are taken out for good"
            .formatted(
                count(erased.results(), "result"),
                count(erased.readings(), "raw reading"),
                count(erased.instructions(), "instruction"));
    return new Forgotten(
        station,
        probe,
        time,
        erased.results(),
        erased.readings(),
        erased.instructions(),
        erased.clean(),
        text,
        (erased.clean() ? "" : NOT_CLEAN) + OUT_OF_OUR_HANDS);
  }

  private static String count(long many, String what) {
    return many + " " + what + (many == 1 ? "" : "s");
  }
}
