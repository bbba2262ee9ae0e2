package org.restpoint.acquisition.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.command.Commands;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Reported;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.acquisition.probe.KeptResults;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.acquisition.station.StationRoutine;
import org.restpoint.acquisition.station.StationTerms;
import org.restpoint.config.file.StationFile;
import org.restpoint.config.station.Station;
import org.restpoint.stability.reading.Reading;
import org.restpoint.stability.uncertainty.Source.Quantity;

/** The recipes of the module's page, from the text of a station file to results and words. */
class RecipesPageTest {

  private static final String STATION =
      """
      station: willow-bench
      broker: embedded
      standards:
        low: { concentration: 10 mg/L, basis: as-N }
        high: { concentration: 100 mg/L, basis: as-N }
      probes:
        no3-a:
          analyte: nitrate
          basis: as-N
          link: { mqtt: { topic: bench/no3-a, payload: number } }
          temperature: { fixed: 25 Cel }
          settle: { rule: consecutive, readings: 3, within: 0.1 mV }
          calibrate: { standards: [low, high] }
      """;

  @TempDir Path folder;

  private static String block(String language) throws IOException {
    String page = Files.readString(Path.of("README.md"));
    String section = page.substring(page.indexOf("\n## Recipes\n"));
    String begin = "```" + language + "\n";
    String rest = section.substring(section.indexOf(begin) + begin.length());
    return rest.substring(0, rest.indexOf("\n```") + 1);
  }

  private Path file() throws IOException {
    return Files.writeString(folder.resolve("station.yaml"), STATION + block("yaml"));
  }

  private Station station() throws IOException {
    StationFile.Outcome outcome = StationFile.read(file(), StationTerms.vocabulary());
    assertThat(outcome).isInstanceOf(StationFile.Outcome.Understood.class);
    return ((StationFile.Outcome.Understood) outcome).station();
  }

  /** An electrode of 58 mV a decade that reads 300 mV in 10 mg/L. */
  private static double millivolts(double milligramsPerLitre) {
    return 300 - 58 * Math.log10(milligramsPerLitre / 10);
  }

  @Test
  void whatAnOperatorNamesIsReckonedFromTheStationFile() throws IOException {
    List<Result> results = new ArrayList<>();
    Output output =
        new Output() {
          @Override
          public void event(Event event) {
            if (event instanceof Result result) {
              results.add(result);
            }
          }

          @Override
          public void answer(Answer answer) {
            assertThat(answer.verdict()).isNotEqualTo(Answer.Verdict.REFUSED);
          }

          @Override
          public void confide(Answer answer) {
            answer(answer);
          }
        };
    StationRoutine routine =
        new StationRoutine(station(), Map.of(), output, new KeptResults(), false);
    Instant now = Instant.parse("2026-04-02T14:00:00Z");
    routine.begin(now);
    List<String> instructions =
        List.of(
            "{\"do\":\"calibrate\",\"standard\":\"low\"}",
            "{\"do\":\"calibrate\",\"standard\":\"high\"}",
            "{\"do\":\"measure\",\"sample\":\"S-1\",\"recipe\":\"soil-scoop\"}",
            "{\"do\":\"measure\",\"sample\":{\"number\":\"S-2\",\"recipe\":\"soil-balance\"}}",
            "{\"do\":\"measure\",\"recipe\":\"tile\"}");
    double[] millivolts = {
      millivolts(10), millivolts(100), millivolts(8), millivolts(8), millivolts(8)
    };
    for (int i = 0; i < millivolts.length; i++) {
      routine.instruct(now, "no3-a", InstructionReader.read(instructions.get(i)).instruction());
      for (int reading = 0; reading < 3; reading++) {
        now = now.plusSeconds(1);
        routine.reading("no3-a", Reading.ofMillivolts(now, millivolts[i]));
      }
    }

    List<Reported> reported = results.stream().map(r -> r.reported().orElseThrow()).toList();
    assertThat(reported)
        .extracting(Reported::kind)
        .containsExactly("dry soil", "soil as received", "water sample");
    assertThat(reported.get(0).value()).isCloseTo(20.84, within(1e-6));
    assertThat(reported.get(1).value()).isCloseTo(40, within(1e-6));
    assertThat(reported.get(2).value()).isCloseTo(8, within(1e-6));
    assertThat(results.get(1).flags()).contains("moisture-unknown");
  }

  /** The last step of the page's example: u of 1 % of what was read. */
  @Test
  void thePagesExampleByHandIsWhatIsReckoned() throws IOException {
    Recipe recipe =
        Objects.requireNonNull(Recipes.of(station().recipes()).byName().get("soil-scoop"));
    Quantity factor =
        recipe.reckon(Quantity.exactly("read", "mg/L", 1), OptionalDouble.empty()).value();
    Quantity soil =
        recipe.reckon(Quantity.of("read", "mg/L", 8, 0.08), OptionalDouble.empty()).value();
    String page = Files.readString(Path.of("README.md"));

    assertThat(factor.value()).isCloseTo(2.605, within(1e-12));
    assertThat(page).contains("= 2.605 L/kg |").contains("= 20.84 mg/kg of dry soil |");
    assertThat(100 * factor.standardUncertainty() / factor.value()).isCloseTo(8.541, within(5e-4));
    assertThat(page).contains("root of the sum of squares: 8.541 % |");
    assertThat(2 * soil.standardUncertainty()).isCloseTo(3.58, within(5e-3));
    assertThat(page).contains("20.84 mg/kg = 3.58 mg/kg |");
  }

  @Test
  void checkSaysWhatThePageSays() throws IOException {
    StringWriter out = new StringWriter();
    int status = Commands.line().setOut(new PrintWriter(out)).execute("check", file().toString());
    assertThat(status).isZero();
    assertThat(out.toString()).contains(block("text"));
  }
}
