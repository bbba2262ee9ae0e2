package org.restpoint.acquisition.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;
import org.restpoint.stability.uncertainty.BudgetLine;

/**
 * One invented recording of a slow electrode, foretold and waited for. The standards of 5 and 100
 * mg/L read 230 and 155 mV; the sample begins 10 mV above its rest of 190 mV and comes to it with a
 * time constant of 90 s. A reading a second, with normal noise of 0.02 mV from a fixed seed.
 */
class ForecastReplayTest {

  private static final int STANDARD_SECONDS = 120;
  private static final int SAMPLE_SECONDS = 900;
  private static final double REST = 190;

  private static final Map<String, String> RULES = new LinkedHashMap<>();

  static {
    RULES.put("forecast", "within: 1 mV");
    RULES.put("unlearnt", "rule: forecast, learn: false");
    RULES.put("share", "rule: forecast, within: 4 %");
    RULES.put("consecutive", "rule: consecutive, readings: 10, within: 0.1 mV");
    RULES.put("drift", "rule: drift, below: 0.2 mV/min");
    RULES.put("any", "rule: any-of, rules: [{ rule: consecutive }, { rule: forecast }]");
    RULES.put("hasty", "rule: forecast, give-up-after: 50 s");
    RULES.put(
        "both",
        "rule: all-of, rules: [{ rule: drift, below: 0.2 mV/min, over: 30 s }, { rule: forecast }],"
            + " give-up-after: 70 s");
  }

  @TempDir private Path folder;
  private final List<Event> events = new ArrayList<>();

  private static double millivolts(int second) {
    if (second < STANDARD_SECONDS) {
      return 230;
    }
    int since = second - 2 * STANDARD_SECONDS;
    return since < 0 ? 155 : REST + 10 * Math.exp(-since / 90.0);
  }

  @BeforeEach
  void replay() throws IOException {
    Random noise = new Random(11);
    events.addAll(
        new RulesSideBySide(RULES, "85..105 %", STANDARD_SECONDS, SAMPLE_SECONDS)
            .replay(folder, second -> millivolts(second) + 0.02 * noise.nextGaussian()));
  }

  private Result result(String probe) {
    return all(Result.class).stream()
        .filter(result -> result.probe().equals(probe))
        .findFirst()
        .orElseThrow();
  }

  private <T> List<T> all(Class<T> kind) {
    return events.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private double offRest(String probe) {
    return Math.abs(result(probe).millivolts().orElseThrow() - REST);
  }

  @Test
  void aForecastIsThereLongBeforeTheRestAndWithinItsUncertaintyOfIt() {
    for (String probe : List.of("forecast", "share")) {
      Result result = result(probe);
      assertThat(result.outcome()).isEqualTo(Result.Outcome.SETTLED);
      assertThat(result.forecast()).isTrue();
      assertThat(result.elapsedSeconds())
          .isLessThan(0.7 * result("consecutive").elapsedSeconds())
          .isLessThan(0.5 * result("drift").elapsedSeconds());
      assertThat(offRest(probe))
          .isLessThan(2 * result.millivoltsUncertainty().orElseThrow())
          .isLessThan(offRest("consecutive") / 2);
    }
    assertThat(result("forecast").rule()).isEqualTo("forecast within 1 mV");
    assertThat(result("share").rule()).isEqualTo("forecast within 4 %");
  }

  @Test
  void thePotentialOfAForecastIsNoReading() {
    Result result = result("forecast");
    double reading = millivolts(2 * STANDARD_SECONDS + (int) result.elapsedSeconds());
    assertThat(reading - result.millivolts().orElseThrow()).isGreaterThan(1);
    assertThat(result.millivoltsUncertainty().orElseThrow()).isLessThan(1);
    assertThat(result.latestMillivolts()).isEmpty();
  }

  @Test
  void aBudgetSaysThatThePotentialWasForetold() {
    assertThat(result("forecast").budget().orElseThrow())
        .extracting(BudgetLine::source)
        .contains("potential at rest, foretold")
        .doesNotContain("potential at rest");
    assertThat(result("consecutive").budget().orElseThrow())
        .extracting(BudgetLine::source)
        .contains("potential at rest");
  }

  @Test
  void whatWasWaitedForIsAReadingAndSaysSo() {
    assertThat(result("consecutive").forecast()).isFalse();
    assertThat(result("drift").forecast()).isFalse();
  }

  @Test
  void inACombinationTheForecastMayBeTheOneThatIsTaken() {
    assertThat(result("any").forecast()).isTrue();
    assertThat(result("any").elapsedSeconds()).isEqualTo(result("unlearnt").elapsedSeconds());
    // Its standards were read by the other rule, which makes the slope a little different.
    assertThat(result("any").millivolts().orElseThrow())
        .isCloseTo(result("unlearnt").millivolts().orElseThrow(), within(0.01));
  }

  @Test
  void whatTheStandardsTaughtIsKnownToTheSampleWhereItIsLearnt() {
    assertThat(result("forecast").responseReadings()).hasValue(2);
    assertThat(result("unlearnt").responseReadings()).isEmpty();
    assertThat(result("any").responseReadings()).isEmpty();
    assertThat(result("consecutive").responseReadings()).isEmpty();
  }

  @Test
  void aForecastThatComesTooLateSaysWhereItWasGoing() {
    assertThat(result("hasty").outcome()).isEqualTo(Result.Outcome.UNSETTLED);
    assertThat(result("hasty").forecast()).isFalse();
    assertThat(result("hasty").millivolts()).isEmpty();
    assertThat(result("hasty").reasons().get(0).text())
        .matches(
            "not at rest within 50 s: .*, drifting -[0-9.]+ mV/min, going to 1[89][0-9](\\.\\d+)?"
                + " \u00b1 [0-9.]+ mV \\(k = 1\\); the rule is forecast within 1 mV");
  }

  @Test
  void aCombinationThatIsGivenUpSaysWhereItsForecastWasGoing() {
    assertThat(result("both").outcome()).isEqualTo(Result.Outcome.UNSETTLED);
    assertThat(result("both").reasons().get(0).text())
        .contains(" mV/min, going to 1")
        .contains(" mV (k = 1); the rule is all of (drift within 0.2 mV/min over 30 s, forecast");
  }

  @Test
  void aStandardIsForetoldToo() {
    assertThat(all(Calibration.class))
        .filteredOn(calibration -> calibration.probe().equals("forecast"))
        .hasSize(2)
        .allSatisfy(
            calibration ->
                assertThat(calibration.verdict()).isEqualTo(Calibration.Verdict.ACCEPTED))
        .allSatisfy(
            calibration -> assertThat(calibration.points()).allMatch(Calibration.Point::forecast));
    assertThat(all(Calibration.class))
        .filteredOn(calibration -> calibration.probe().equals("consecutive"))
        .allSatisfy(
            calibration -> assertThat(calibration.points()).noneMatch(Calibration.Point::forecast));
  }
}
