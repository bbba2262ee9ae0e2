package org.restpoint.acquisition.schema;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Guidance;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.acquisition.meaning.Meaning;
import org.restpoint.acquisition.probe.Archive;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.acquisition.service.Stations;
import org.restpoint.acquisition.station.StationRoutine;
import org.restpoint.config.station.Station;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.reading.Reading;

/** From the words of a station file to what a result says of itself. */
class GuidanceTest {

  private int samples;

  private static final String STATION =
      """
      station: willow-bench
      broker: embedded
      standards:
        low:  { concentration: 10 mg/L, basis: as-N }
        high: { concentration: 100 mg/L, basis: as-N }
      probes:
        no3-a:
          analyte: nitrate
          basis: as-N
          link: { recording: { file: any.csv } }
          temperature: { fixed: 22.0 Cel, uncertainty: 0.2 K }
          settle: { rule: consecutive, readings: 3, within: 0.1 mV }
          calibrate: { standards: [low, high] }
      """;

  private static final String GUIDANCE =
      """
      guidance:
        well:  { table: us-drinking-water, for: [well water] }
        world: { table: who-drinking-water, for: [well water, surface water] }
        sidedress: { table: late-spring-soil, for: [soil] }
      """;

  @TempDir private Path folder;

  private final List<Event> events = new ArrayList<>();
  private final List<Answer> answers = new ArrayList<>();
  private Instant now = Instant.parse("2026-06-09T08:00:00Z");

  private final class Kept implements Output {

    @Override
    public void event(Event event) {
      events.add(event);
    }

    @Override
    public void answer(Answer answer) {
      answers.add(answer);
    }

    @Override
    public void confide(Answer answer) {
      answer(answer);
    }
  }

  private StationRoutine calibrated(String text) {
    Station station = Stations.read(folder, text);
    StationRoutine routine =
        new StationRoutine(station, Map.of(), new Kept(), Archive.empty(), false);
    routine.begin(now);
    tell(routine, "{\"do\":\"calibrate\",\"standard\":\"low\"}", 300);
    tell(routine, "{\"do\":\"calibrate\",\"standard\":\"high\"}", 243);
    return routine;
  }

  private void tell(StationRoutine routine, String instruction, double millivolts) {
    routine.instruct(now, "no3-a", InstructionReader.read(instruction).instruction());
    for (int i = 0; i < 3; i++) {
      now = now.plusSeconds(1);
      routine.reading("no3-a", Reading.ofMillivolts(now, millivolts));
    }
  }

  /** The record with a number of its own. */
  private String numbered(String record) {
    if (!record.startsWith("{")) {
      return record;
    }
    samples++;
    String number = "{\"number\":\"G-%d\"".formatted(samples);
    return record.equals("{}") ? number + "}" : number + "," + record.substring(1);
  }

  /** The result of a sample with this record, whose solution holds so much nitrate. */
  private Result measured(StationRoutine routine, String sample, double milligramsPerLitre) {
    events.clear();
    answers.clear();
    tell(
        routine,
        "{\"do\":\"measure\",\"sample\":" + numbered(sample) + "}",
        300 - 57 * Math.log10(milligramsPerLitre / 10));
    Result result =
        events.stream()
            .filter(Result.class::isInstance)
            .map(Result.class::cast)
            .findFirst()
            .orElseThrow();
    assertThat(Schemas.problems("result", EventJson.write(result))).isEmpty();
    return result;
  }

  @Test
  void aStationThatChoosesNoTableTellsNoMeaning() {
    assertThat(measured(calibrated(STATION), "{\"kind\":\"well water\"}", 20).guidance()).isEmpty();
  }

  @Test
  void eachTableForTheKindIsAskedAndTheAnswerSaysTheSame() {
    StationRoutine routine = calibrated(STATION + GUIDANCE);
    Result result = measured(routine, "{\"kind\":\"well water\"}", 20);
    List<Guidance> told = result.guidance().orElseThrow();
    assertThat(told).extracting(Guidance::table).containsExactly("well", "world");
    assertThat(told).allSatisfy(one -> assertThat(one.meaning()).contains("at or above"));
    assertThat(answers.get(answers.size() - 1).outcome()).contains(result);
    assertThat(measured(routine, "{\"kind\":\"tile water\"}", 20).guidance()).isEmpty();
    assertThat(measured(routine, "\"S-17\"", 20).guidance()).isEmpty();
  }

  @Test
  void aWellNearTheLimitIsToldToBeTooNear() {
    Result result = measured(calibrated(STATION + GUIDANCE), "{\"kind\":\"well water\"}", 9.95);
    List<Guidance> told = result.guidance().orElseThrow();
    assertThat(told.get(0).meaning()).contains("too near 10 mg/L as N to tell");
    assertThat(told.get(1).meaning()).contains("mg/L as nitrate: below the guideline value");
  }

  @Test
  void soilWithoutARecipeIsToldWhyTheTableDoesNotApply() {
    Result result =
        measured(
            calibrated(STATION + GUIDANCE),
            "{\"kind\":\"soil\",\"depthTopCentimetres\":0,\"depthBottomCentimetres\":30}",
            12);
    Guidance told = result.guidance().orElseThrow().get(0);
    assertThat(told.meaning()).startsWith("This table does not apply");
    assertThat(told.rate()).isEmpty();
  }

  @Test
  void aResultThatIsChangedLaterSaysWhatItMeansThen() {
    Station station = Stations.read(folder, STATION + GUIDANCE);
    Result result = measured(calibrated(STATION + GUIDANCE), "{\"kind\":\"well water\"}", 20);
    Meaning meaning =
        Meaning.of(Analyte.named("nitrate").orElseThrow(), station.guidance().values());
    assertThat(meaning.explain(result)).isSameAs(result);
    Result flagged = meaning.explain(result.withFlag("check-off").again(now, "a check failed"));
    assertThat(flagged.guidance().orElseThrow().get(0).meaning())
        .startsWith("This result is flagged (holding-unknown, check-off)");
    assertThat(flagged.revision()).isEqualTo(2);
    assertThat(Schemas.problems("result", EventJson.write(flagged))).isEmpty();
    assertThat(
            Meaning.of(Analyte.named("nitrate").orElseThrow(), List.of())
                .explain(result)
                .guidance())
        .isEqualTo(Optional.empty());
  }
}
