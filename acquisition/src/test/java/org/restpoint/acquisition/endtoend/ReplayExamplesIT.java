package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.restpoint.acquisition.example.Examples;

/**
 * The recordings under stability/examples, replayed by the commands that the page about the science
 * gives: what is found is what they were made from, within its uncertainty, and the page quotes
 * what the program says.
 */
@TestInstance(Lifecycle.PER_CLASS)
@Timeout(300)
class ReplayExamplesIT {

  private static final Page PAGE = Page.of("stability/README.md");

  /** Decimals of numbers that are not rounded anywhere: the last bits of some twenty operations. */
  private static final double ROUNDING = 1e-9;

  private final Map<String, List<JsonNode>> said = new HashMap<>();

  static List<String> names() {
    return List.copyOf(Examples.names());
  }

  @BeforeAll
  void replayAll(@TempDir Path folder) {
    for (String name : names()) {
      Ran ran = Ran.command(folder, command(name)).well();
      assertThat(ran.err()).isEmpty();
      said.put(name, Quoted.lines(ran.out()));
    }
  }

  /** The command of the page, with the paths that it gives from the top. */
  private static List<String> command(String name) {
    String line =
        PAGE.blocks("sh").stream()
            .flatMap(String::lines)
            .filter(typed -> typed.contains("examples/" + name + "/"))
            .findFirst()
            .orElseThrow();
    List<String> words = new ArrayList<>(Arrays.asList(line.split(" ", -1)));
    assertThat(words.subList(0, 4))
        .containsExactly("java", "-jar", "acquisition/target/restpoint.jar", "replay");
    Object[] arguments =
        words.subList(3, words.size()).stream()
            .map(word -> word.contains("/") ? Page.TOP.resolve(word).toString() : word)
            .toArray();
    return Jar.command(arguments);
  }

  private List<JsonNode> lines(String example) {
    return said.getOrDefault(example, List.of());
  }

  private Stream<JsonNode> events(String example, String event) {
    return lines(example).stream().filter(line -> line.path("event").asText().equals(event));
  }

  private List<JsonNode> results(String example) {
    return events(example, "result").toList();
  }

  private List<JsonNode> calibrations(String example) {
    return events(example, "calibration").toList();
  }

  private static List<String> codes(JsonNode list) {
    List<String> codes = new ArrayList<>();
    list.forEach(one -> codes.add(one.isTextual() ? one.asText() : one.path("code").asText()));
    return codes;
  }

  /** The coverage factor of 2 leaves one in twenty outside; these are made once and are inside. */
  private static void assertFound(JsonNode result, double truth) {
    assertThat(result.path("outcome").asText()).isEqualTo("settled");
    assertThat(result.at("/concentration/relation").asText()).isEqualTo("=");
    assertThat(result.at("/concentration/value").asDouble())
        .isCloseTo(truth, within(result.at("/concentration/uncertainty").asDouble()));
  }

  @ParameterizedTest
  @MethodSource("names")
  void thePageQuotesWhatTheProgramSays(String name) {
    List<Quoted> quotes = Quoted.in(PAGE.example(name));
    assertThat(quotes).isNotEmpty();
    quotes.forEach(quote -> quote.assertSaidBy(quote.lineAmong(lines(name))));
  }

  @Test
  void directFindsTheTileWaterColdAndAtTheTemperatureOfTheStandards() {
    List<JsonNode> results = results("direct");
    assertThat(results).hasSize(3);
    assertFound(results.get(0), Examples.TILE_WATER);
    assertFound(results.get(1), Examples.TILE_WATER);
    assertThat(codes(results.get(0).path("flags"))).containsExactly("temperature-differs");
    assertThat(codes(results.get(1).path("flags"))).isEmpty();
    assertThat(results.get(0).at("/concentration/uncertainty").asDouble())
        .as("what the temperature costs")
        .isGreaterThan(10 * results.get(1).at("/concentration/uncertainty").asDouble());
    assertThat(results.get(2).at("/verification/verdict").asText()).isEqualTo("passed");
  }

  /** The two lines of the page, worked out with the numbers it quotes. */
  @Test
  void directIsWorkedOutByHandAsThePageSays() {
    double warm = (188.824 - 32.323) / -56.800;
    double cold = (187.408 - 32.323) / -56.800 * 295.15 / 289.15;
    assertThat(PAGE.text())
        .contains("(188.824 − 32.323)/(−56.800) = −2.75530, c = 1.7567·10⁻³ mol/L = **24.61** mg/L")
        .contains("(187.408 − 32.323)/(−56.800) · 295.15/289.15 = −2.78703")
        .contains("c = 1.6330·10⁻³ mol/L = **22.87** mg/L");
    assertThat(warm).isCloseTo(-2.75530, within(5e-6));
    assertThat(cold).isCloseTo(-2.78703, within(5e-6));
    List<JsonNode> results = results("direct");
    assertThat(results.get(1).at("/concentration/value").asDouble())
        .as("the slope and the offset are rounded to 0.001 mV")
        .isCloseTo(14007 * Math.pow(10, warm), within(0.005));
    assertThat(results.get(0).at("/concentration/value").asDouble())
        .isCloseTo(14007 * Math.pow(10, cold), within(0.005));
  }

  @Test
  void theSharesOfABudgetMakeUpTheWhole() {
    for (JsonNode result : results("direct")) {
      double shares = 0;
      double squares = 0;
      for (JsonNode line : result.path("budget")) {
        shares += line.path("sharePercent").asDouble();
        squares += Math.pow(line.path("contribution").asDouble(), 2);
      }
      assertThat(shares).isCloseTo(100, within(100 * ROUNDING));
      assertThat(2 * Math.sqrt(squares))
          .isCloseTo(result.at("/concentration/uncertainty").asDouble(), within(ROUNDING));
    }
  }

  @Test
  void lowEndFindsTheBendAndTellsWhatLiesBelowItAsLess() {
    List<JsonNode> calibrations = calibrations("low-end");
    JsonNode limit = calibrations.get(4).path("detectionLimit");
    assertThat(limit.path("value").asDouble())
        .isCloseTo(Examples.LOW_END, within(2 * limit.path("uncertainty").asDouble()));
    List<JsonNode> results = results("low-end");
    assertFound(results.get(0), Examples.SPRING);
    assertThat(codes(results.get(0).path("flags"))).isEmpty();
    JsonNode rain = results.get(1);
    assertThat(rain.at("/concentration/relation").asText()).isEqualTo("<");
    assertThat(rain.at("/concentration/value").asDouble()).isGreaterThan(Examples.RAIN);
    assertThat(rain.at("/concentration/value")).isEqualTo(limit.path("value"));
  }

  @Test
  void phFindsThePond() {
    JsonNode pond = results("ph").get(0);
    assertFound(pond, Examples.POND_PH);
    assertThat(pond.at("/concentration/unit").asText()).isEqualTo("[pH]");
    assertThat(codes(pond.path("flags"))).containsExactly("temperature-differs");
  }

  @Test
  void interferenceFindsNitrateWithWhatTheNitriteThatNobodyMeasuredAdds() {
    JsonNode drain = results("interference").get(0);
    assertFound(drain, Examples.DRAIN + Examples.NITRITE_SELECTIVITY * Examples.DRAIN_NITRITE);
    double value = drain.at("/concentration/value").asDouble();
    double uncertainty = drain.at("/concentration/uncertainty").asDouble();
    double nitrite = drain.at("/interference/1/bias").asDouble();
    assertThat(drain.at("/interference/1/ion").asText()).isEqualTo("nitrite");
    assertThat(nitrite).isGreaterThan(uncertainty);
    assertThat(Examples.DRAIN).isBetween(value - nitrite - uncertainty, value + uncertainty);
    assertThat(codes(drain.path("flags"))).containsExactly("interference");
  }

  @Test
  void outlyingNamesTheStandardThatWasContaminated() {
    JsonNode five = calibrations("outlying").get(4);
    assertThat(codes(five.path("remarks")))
        .containsExactly("standards-scatter", "standard-outlying");
    assertThat(five.at("/remarks/1/text").asText()).startsWith("standard n-30 lies ");
    assertThat(five.path("points")).hasSize(5);
    assertThat(codes(calibrations("outlying").get(5).path("flags"))).isEmpty();
  }

  @Test
  void outlyingFindsTheWellBeforeAndAfterOneStandardHasSetTheOffsetAnew() {
    JsonNode before = calibrations("outlying").get(5);
    JsonNode after = calibrations("outlying").get(6);
    assertThat(codes(after.path("flags"))).containsExactly("one-point");
    assertThat(after.path("slopeMillivoltsPerDecade"))
        .isEqualTo(before.path("slopeMillivoltsPerDecade"));
    assertThat(
            after.path("offsetMillivolts").asDouble() - before.path("offsetMillivolts").asDouble())
        .as("the mean of ten readings of 0.02 mV noise, twice")
        .isCloseTo(-Examples.SLIP_MILLIVOLTS, within(0.03));
    List<JsonNode> results = results("outlying");
    assertThat(results).hasSize(2);
    for (JsonNode well : results) {
      assertFound(well, Examples.WELL);
      assertThat(codes(well.path("flags"))).isEmpty();
    }
  }

  @Test
  void faultsAreRefusedEachByItsName() {
    Map<String, List<String>> refused = new HashMap<>();
    calibrations("faults").stream()
        .filter(round -> round.path("verdict").asText().equals("refused"))
        .forEach(round -> refused.put(round.path("probe").asText(), codes(round.path("reasons"))));
    assertThat(refused)
        .containsExactlyInAnyOrderEntriesOf(
            Map.of(
                "reversed", List.of("slope-reversed"),
                "dead", List.of("electrode-dead", "slope-none"),
                "shorted", List.of("input-shorted", "slope-none")));
  }

  @Test
  void creepIsFlaggedWhereReadingsAlikeComeTooEarlyAndADriftLimitWaitsForTheTruth() {
    JsonNode alike = ofProbe("alike");
    JsonNode slowEnough = ofProbe("slow-enough");
    assertThat(codes(alike.path("flags"))).containsExactly("creeping");
    assertThat(codes(slowEnough.path("flags"))).isEmpty();
    assertThat(slowEnough.path("elapsedSeconds").asDouble())
        .isGreaterThan(2 * alike.path("elapsedSeconds").asDouble());
    assertFound(slowEnough, Examples.EXTRACT);
    assertThat(alike.at("/concentration/value").asDouble())
        .as("more than its uncertainty off, which is what the flag is for")
        .isLessThan(Examples.EXTRACT - alike.at("/concentration/uncertainty").asDouble());
  }

  private JsonNode ofProbe(String probe) {
    return results("creep").stream()
        .filter(result -> result.path("probe").asText().equals(probe))
        .findFirst()
        .orElseThrow();
  }
}
