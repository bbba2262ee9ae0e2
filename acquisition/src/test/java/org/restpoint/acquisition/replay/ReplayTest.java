package org.restpoint.acquisition.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.RawReading;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.service.Stations;

/**
 * Recordings with their instructions through the routines. In them nitrate standards of 5 and 100
 * mg/L as N read 230.0 and 155.5 mV at one temperature, so 190.0 mV is 5 · 20^(40/74.5) mg/L.
 */
class ReplayTest {

  private static final double SAMPLE = 5 * Math.pow(20, 40 / 74.5);

  private static final String STATION =
      """
      station: farm
      broker: embedded
      standards:
        low:  { concentration: 5 mg/L,   basis: as-N }
        high: { concentration: 100 mg/L, basis: as-N }
      probes:
        no3-a: &electrode
          analyte: nitrate
          basis: as-N
          link: { recording: { file: any.csv } }
          temperature: { from: reading }
          settle: { rule: consecutive, readings: 5, within: 0.1 mV, give-up-after: 30 s }
          calibrate: { standards: [low, high] }
        no3-b: *electrode
        no3-c:
          analyte: nitrate
          basis: as-N
          link: { recording: { file: any.csv } }
          temperature: { probe: temp-1, stale-after: 10 s }
          settle: { rule: consecutive, readings: 5, within: 0.1 mV, give-up-after: 30 s }
          calibrate: { standards: [low, high] }
        stream:
          analyte: nitrate
          basis: as-N
          link: { recording: { file: any.csv } }
          temperature: { fixed: 12 Cel }
          settle: { rule: consecutive, readings: 5, within: 0.1 mV }
          calibrate: { standards: [low, high] }
          routine: { every: 10 s }
        temp-1:
          measures: temperature
          link: { recording: { file: any.csv } }
      """;

  @TempDir private Path folder;
  private final List<Event> events = new ArrayList<>();
  private final List<String> complaints = new ArrayList<>();

  private Replay.Counts replay(boolean raw, List<String> rows, List<String> instructions) {
    try {
      Path recording = folder.resolve("recording.csv");
      Files.writeString(
          recording, "time,probe,millivolts,celsius\n" + String.join("\n", rows) + "\n");
      Path told = Files.write(folder.resolve("told.jsonl"), instructions);
      events.clear();
      complaints.clear();
      return new Replay(Stations.read(folder, STATION), raw, events::add, complaints::add)
          .run(recording, InstructionFile.read(told));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private <T> List<T> told(Class<T> kind) {
    return events.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private Result result(String probe) {
    return told(Result.class).stream()
        .filter(result -> result.probe().equals(probe))
        .findFirst()
        .orElseThrow();
  }

  /** A session of a probe from a second on: low to 10 s, high to 20 s, then the sample to 30 s. */
  private static List<String> session(String probe, double start, String celsius) {
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      String millivolts = i < 20 ? "230.0" : i < 40 ? "155.5" : "190.0";
      rows.add("%s,%s,%s,%s".formatted(start + 0.5 * i, probe, millivolts, celsius));
    }
    return rows;
  }

  private static List<String> instructions(String probe, double start) {
    return List.of(
        "{\"time\":%s,\"probe\":\"%s\",\"do\":\"calibrate\",\"standard\":\"low\"}"
            .formatted(start + 1, probe),
        "{\"time\":%s,\"probe\":\"%s\",\"do\":\"calibrate\",\"standard\":\"high\"}"
            .formatted(start + 11.25, probe),
        "{\"time\":%s,\"probe\":\"%s\",\"do\":\"measure\",\"sample\":\"S-1\"}"
            .formatted(start + 21, probe));
  }

  private static List<String> merged(List<String> one, List<String> other) {
    List<String> all = new ArrayList<>(one);
    all.addAll(other);
    all.sort(Comparator.comparingDouble(row -> Double.parseDouble(row.split(",", 2)[0])));
    return all;
  }

  private static List<String> both(List<String> one, List<String> other) {
    List<String> all = new ArrayList<>(one);
    all.addAll(other);
    return all;
  }

  @Test
  void secondsFromZeroGiveTheSampleAndIdsFromZero() {
    replay(false, session("no3-a", 0, "21.5"), instructions("no3-a", 0));
    assertThat(complaints).isEmpty();
    assertThat(told(Calibration.class))
        .extracting(Calibration::verdict)
        .containsOnly(Calibration.Verdict.ACCEPTED);
    Result result = result("no3-a");
    assertThat(result.id()).isEqualTo("no3-a-19700101T000023.500Z");
    assertThat(result.time()).isEqualTo(Instant.ofEpochMilli(23_500));
    assertThat(result.concentration().orElseThrow().value())
        .as("all at one temperature, so nothing but binary rounding is between")
        .isCloseTo(SAMPLE, within(1e-9));
  }

  @Test
  void aReadingOfTheSameMillisecondComesBeforeTheInstruction() {
    replay(false, session("no3-a", 0, "21.5"), instructions("no3-a", 0));
    assertThat(result("no3-a").readings())
        .as("the reading at 21.0 s does not count for what was told at 21.0 s")
        .isEqualTo(5);
  }

  @Test
  void severalProbesAreEachAsIfTheyWereAlone() {
    replay(false, session("no3-a", 0, "21.5"), instructions("no3-a", 0));
    List<Event> alone = ofProbe("no3-a");
    replay(false, session("no3-b", 3.3, "11.5"), instructions("no3-b", 3.3));
    List<Event> otherAlone = ofProbe("no3-b");

    replay(
        false,
        merged(session("no3-a", 0, "21.5"), session("no3-b", 3.3, "11.5")),
        both(instructions("no3-a", 0), instructions("no3-b", 3.3)));
    assertThat(ofProbe("no3-a")).isEqualTo(alone).hasSize(3);
    assertThat(ofProbe("no3-b")).isEqualTo(otherAlone).hasSize(3);
    assertThat(events).isSortedAccordingTo(Comparator.comparing(Event::time));
  }

  private List<Event> ofProbe(String probe) {
    return events.stream()
        .filter(event -> event.probe().equals(probe))
        .filter(event -> event instanceof Result || event instanceof Calibration)
        .toList();
  }

  @Test
  void aThermometerLendsItsTemperature() {
    replay(
        false,
        merged(
            session("no3-c", 0, ""),
            List.of("0,temp-1,,18.5", "9,temp-1,,18.5", "18,temp-1,,18.5")),
        instructions("no3-c", 0));
    Result result = result("no3-c");
    assertThat(result.celsius()).hasValue(18.5);
    assertThat(result.concentration().orElseThrow().value()).isCloseTo(SAMPLE, within(1e-9));
  }

  @Test
  void aTemperatureThatIsTooOldGivesNoNumber() {
    replay(
        false,
        merged(session("no3-c", 0, ""), List.of("0,temp-1,,18.5", "8.5,temp-1,,18.5")),
        instructions("no3-c", 0));
    Result result = result("no3-c");
    assertThat(result.outcome()).isEqualTo(Result.Outcome.REFUSED);
    assertThat(result.concentration()).isEmpty();
    assertThat(result.reasons().get(0).text())
        .isEqualTo("the temperature of probe temp-1 is 15 s old; it may be 10 s");
  }

  @Test
  void anUnknownProbeIsToldOnceAndItsRowsAreCounted() {
    Replay.Counts counts =
        replay(
            false,
            merged(session("no3-a", 0, "21.5"), session("no3-x", 0.1, "21.5")),
            instructions("no3-a", 0));
    assertThat(complaints)
        .containsExactly(
            "the recording has readings of no3-x, which is not a probe of station farm"
                + " (no3-a, no3-b, no3-c, stream, temp-1); they are passed over");
    assertThat(counts).isEqualTo(new Replay.Counts(60, 60));
    assertThat(ofProbe("no3-a")).hasSize(3);
  }

  @Test
  void aRowThatIsNoReadingIsToldByItsLine() {
    Replay.Counts counts =
        replay(
            false, List.of("1,no3-a,230.0,21", "2,no3-a,high,21", "0.5,no3-a,230.0,21"), List.of());
    assertThat(complaints)
        .containsExactly(
            "%s line 3: millivolts \"high\" is not a number".formatted(recording()),
            "%s line 4: the time 1970-01-01T00:00:00.500Z goes back behind 1970-01-01T00:00:01Z of a row before it"
                .formatted(recording()));
    assertThat(counts).isEqualTo(new Replay.Counts(1, 2));
  }

  private Path recording() {
    return folder.resolve("recording.csv");
  }

  @Test
  void rawReadingsStandAmongTheEventsInTheOrderOfTime() {
    replay(
        true,
        merged(session("no3-a", 0, "21.5"), session("stream", 0, "")),
        instructions("no3-a", 0));
    assertThat(told(RawReading.class)).hasSize(120);
    assertThat(events).isSortedAccordingTo(Comparator.comparing(Event::time));
    int result = events.indexOf(result("no3-a"));
    assertThat(events.subList(0, result))
        .as("the reading that settled it stands before it")
        .contains(
            new RawReading(
                "farm",
                "no3-a",
                Instant.ofEpochMilli(23_500),
                OptionalDouble.of(190),
                OptionalDouble.of(21.5)));
  }

  @Test
  void whatIsUnderWayAtTheEndIsGivenUpAtItsDeadline() {
    replay(false, session("no3-a", 0, "21.5").subList(0, 44), instructions("no3-a", 0));
    Result result = result("no3-a");
    assertThat(result.outcome()).isEqualTo(Result.Outcome.UNSETTLED);
    assertThat(result.time()).isEqualTo(Instant.ofEpochSecond(51));
    assertThat(result.flags()).containsExactly("unsettled");
  }

  @Test
  void instructionsWithoutAnyReadingAreGivenUpToo() {
    replay(false, List.of(), instructions("no3-a", 0));
    assertThat(told(Calibration.class).get(0).reasons().get(0).code()).isEqualTo("no-readings");
    assertThat(result("no3-a").reasons().get(0).code()).isEqualTo("busy");
  }

  @Test
  void aRefusedInstructionIsToldInWords() {
    replay(
        false,
        List.of("0,no3-a,230.0,21"),
        List.of("{\"time\":1,\"probe\":\"no3-a\",\"do\":\"calibrate\",\"standard\":\"mid\"}"));
    assertThat(complaints)
        .containsExactly(
            "1970-01-01T00:00:01Z no3-a: calibrate was refused: standard mid is not one of this"
                + " probe's standards: low, high. Name one of them, or define it in the station file"
                + " and list it under calibrate.");
  }

  @Test
  void aStreamHasAResultEachIntervalAndSaysWhereItHasNone() {
    List<String> rows = session("stream", 0, "");
    rows.subList(20, 40).clear();
    replay(false, rows, List.of());
    assertThat(told(Result.class))
        .extracting(result -> result.time().getEpochSecond() / 10, Result::quality)
        .containsExactly(tuple(0L, 4), tuple(1L, 9), tuple(2L, 4));
  }
}
