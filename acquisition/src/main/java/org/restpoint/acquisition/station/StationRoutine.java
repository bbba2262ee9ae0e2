package org.restpoint.acquisition.station;

import java.time.Instant;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.restpoint.acquisition.event.RawReading;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.meaning.Meaning;
import org.restpoint.acquisition.probe.Archive;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.acquisition.probe.ProbeMemory;
import org.restpoint.acquisition.probe.ProbeSettings;
import org.restpoint.acquisition.probe.Retelling;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.Moves;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.Station;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.reading.Reading;

/**
 * All probes of a station, each event of all of them in the order of its time. Input comes in the
 * order of its times, from one thread; output comes out of the {@link Output} it was made with,
 * before the call returns.
 */
public final class StationRoutine {

  private final Station station;
  private final Output output;
  private final boolean allRaw;
  private final Temperatures temperatures = new Temperatures();
  private final SampleDesk samples;
  private final ForgetDesk forgetting;
  private final Map<String, BatchRoutine> routines = new LinkedHashMap<>();

  /**
   * A station that goes on from what each probe remembers.
   *
   * @param station the station
   * @param memories by probe; a probe without one begins anew
   * @param output where events and answers go
   * @param archive what was published before
   * @param allRaw whether the raw readings of all probes are told, or just of those that ask for it
   */
  public StationRoutine(
      Station station,
      Map<String, ProbeMemory> memories,
      Output output,
      Archive archive,
      boolean allRaw) {
    this.station = station;
    this.allRaw = allRaw;
    List<ProbeSettings> electrodes = StationTerms.probes(station);
    Map<String, Meaning> meanings = new HashMap<>();
    for (ProbeSettings settings : electrodes) {
      meanings.put(settings.probe(), Meaning.of(settings.analyte(), station.guidance().values()));
    }
    this.output = new Explained(output, meanings);
    Map<String, Retelling> retellings = new HashMap<>();
    for (ProbeSettings settings : electrodes) {
      retellings.put(settings.probe(), new Retelling(settings, archive));
      ProbeMemory memory = memories.getOrDefault(settings.probe(), ProbeMemory.blank());
      routines.put(
          settings.probe(),
          new BatchRoutine(settings, moves(settings.probe()), memory, this.output, archive));
    }
    samples = new SampleDesk(station.name(), retellings, this.output, archive);
    forgetting = new ForgetDesk(station.name(), routines, this.output, archive);
  }

  private Moves moves(String probe) {
    return Optional.ofNullable(station.probes().get(probe))
        .flatMap(Probe::electrode)
        .map(Electrode::moves)
        .orElseGet(Moves.Told::new);
  }

  /** Begins, or goes on after a restart. */
  public void begin(Instant now) {
    routines.values().forEach(routine -> routine.begin(now));
  }

  /** Takes a reading of a probe; of one that the station does not have it says false. */
  public boolean reading(String probe, Reading reading) {
    Probe known = station.probes().get(probe);
    if (known == null) {
      return false;
    }
    elapse(reading.time());
    if ((allRaw || known.publishRaw()) && !withholds(probe)) {
      output.event(
          new RawReading(
              station.name(), probe, reading.time(), reading.millivolts(), reading.celsius()));
    }
    temperatures.note(probe, reading);
    BatchRoutine routine = routines.get(probe);
    Optional<Electrode> electrode = known.electrode();
    if (routine != null && electrode.isPresent() && reading.millivolts().isPresent()) {
      routine.reading(
          reading.time(),
          reading.millivolts().getAsDouble(),
          temperatures.of(electrode.get().temperature(), reading));
    }
    return true;
  }

  /** Whether nothing that a probe reads may be kept or published: it stands in a private sample. */
  public boolean withholds(String probe) {
    BatchRoutine routine = routines.get(probe);
    return routine != null && routine.withholds();
  }

  /**
   * Ends the reading of a private sample of which nothing came: a journal keeps neither its
   * readings nor when it ended, and something else was asked of the probe since.
   */
  public void passUnread(Instant time, String probe) {
    elapse(time);
    Optional.ofNullable(routines.get(probe)).ifPresent(routine -> routine.passUnread(time));
  }

  /** Carries out an instruction; one for a probe that is no electrode is refused. */
  public void instruct(Instant time, String probe, Instruction instruction) {
    elapse(time);
    BatchRoutine routine = routines.get(probe);
    if (routine != null) {
      if (instruction.task() instanceof Instruction.Forget forget) {
        forgetting.take(time, probe, instruction, forget.sample());
      } else if (samples.take(time, probe, instruction)) {
        routine.instruct(time, instruction);
      }
      return;
    }
    Reason reason =
        new Reason(
            "probe-unknown",
            "%s is not an electrode of this station: %s"
                .formatted(probe, String.join(", ", routines.keySet())),
            "Name one of them.");
    new DeskAnswers(station.name(), output).refused(time, probe, instruction, reason);
  }

  /**
   * Says the answers to the last word of a batch again, where the instruction is that word with the
   * same id; whether it was.
   */
  public boolean again(String probe, Instruction instruction) {
    BatchRoutine routine = routines.get(probe);
    return routine != null && routine.again(instruction);
  }

  /** The name of the cup of a batch that a probe is at, or moves to; empty where it is at none. */
  public Optional<String> presentCup(Instant now, String probe) {
    elapse(now);
    return Optional.ofNullable(routines.get(probe)).flatMap(BatchRoutine::presentCup);
  }

  /** Lets time pass: what was due before {@code now} happens, in the order of its times. */
  public void elapse(Instant now) {
    for (Optional<BatchRoutine> first = first(now); first.isPresent(); first = first(now)) {
      first.get().elapse(first.get().due().orElseThrow());
    }
    routines.values().forEach(routine -> routine.elapse(now));
  }

  /** The probe for which something is due first, at {@code now} or before. */
  private Optional<BatchRoutine> first(Instant now) {
    Optional<BatchRoutine> first = Optional.empty();
    Instant earliest = now;
    for (BatchRoutine routine : routines.values()) {
      Optional<Instant> due = routine.due();
      if (due.isPresent()
          && (due.get().isBefore(earliest) || (first.isEmpty() && due.get().equals(earliest)))) {
        first = Optional.of(routine);
        earliest = due.get();
      }
    }
    return first;
  }

  /** No reading will come any more: what instructions began is given up at its deadline. */
  public void conclude() {
    routines.values().forEach(BatchRoutine::conclude);
  }

  /** What a probe needs to go on later; empty for a thermometer. */
  public Optional<ProbeMemory> memory(String probe) {
    return Optional.ofNullable(routines.get(probe)).map(BatchRoutine::memory);
  }
}
