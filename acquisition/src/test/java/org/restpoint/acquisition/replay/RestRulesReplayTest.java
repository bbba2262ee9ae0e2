package org.restpoint.acquisition.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;

/**
 * One invented recording under every rule of rest. The standards of 5 and 100 mg/L read 230.0 and
 * 190.0 mV: a slope of −40/log10 20 mV/decade, half the ideal one. The sample creeps towards 210.0
 * mV with a time constant of 30 s, from 2 mV above it, a reading a second.
 */
class RestRulesReplayTest {

  private static final int STANDARD_SECONDS = 100;
  private static final int SAMPLE_SECONDS = 400;
  private static final double REST = 210;

  /** 1 % of the concentration on the slope of the calibration, and on the ideal one at 25 °C. */
  private static final double ONE_PERCENT = 40 / Math.log10(20) * Math.log10(1.01);

  private static final double ONE_PERCENT_IDEAL = 59.1593 * Math.log10(1.01);

  private static final String DRIFT = "rule: drift, below: 0.2 mV/min, over: 60 s";
  private static final String BOTH = "rules: [{ rule: consecutive }, { " + DRIFT + " }]";

  private static final Map<String, String> RULES = new LinkedHashMap<>();

  static {
    RULES.put("consecutive", "rule: consecutive, readings: 10, within: 0.1 mV");
    RULES.put("minute", "rule: consecutive, readings: 10, within: 0.1 mV, for: 60 s");
    RULES.put("drift", DRIFT);
    RULES.put("percent", "rule: consecutive, readings: 10, within: 1 %");
    RULES.put("same", "rule: consecutive, readings: 10, within: " + ONE_PERCENT + " mV");
    RULES.put("ideal", "rule: consecutive, readings: 10, within: " + ONE_PERCENT_IDEAL + " mV");
    RULES.put("all", "rule: all-of, " + BOTH);
    RULES.put("any", "rule: any-of, " + BOTH);
    RULES.put("hasty", "give-up-after: 80 s, rule: all-of, " + BOTH);
  }

  @TempDir private Path folder;
  private final List<Event> events = new ArrayList<>();

  private static double millivolts(int second) {
    if (second < STANDARD_SECONDS) {
      return 230;
    }
    int since = second - 2 * STANDARD_SECONDS;
    return since < 0 ? 190 : REST + 2 * Math.exp(-since / 30.0);
  }

  @BeforeEach
  void replay() throws IOException {
    events.addAll(
        new RulesSideBySide(RULES, "50..150 %", STANDARD_SECONDS, SAMPLE_SECONDS)
            .replay(folder, RestRulesReplayTest::millivolts));
  }

  private Result result(String probe) {
    return events.stream()
        .filter(Result.class::isInstance)
        .map(Result.class::cast)
        .filter(result -> result.probe().equals(probe))
        .findFirst()
        .orElseThrow();
  }

  private double seconds(String probe) {
    return result(probe).elapsedSeconds();
  }

  private double offRest(String probe) {
    return result(probe).millivolts().orElseThrow() - REST;
  }

  @Test
  void aToleranceCallsACreepAtRestAndTheResultSaysThatItCreeps() {
    Result result = result("consecutive");
    assertThat(result.outcome()).isEqualTo(Result.Outcome.SETTLED);
    assertThat(result.flags()).containsExactly("creeping");
    assertThat(result.quality()).isEqualTo(3);
    // 2·e^(−T/30)·(e^0.3 − 1) = 0.1 mV: T = 58.4 s.
    assertThat(result.elapsedSeconds()).isEqualTo(59);
    assertThat(result.driftMillivoltsPerMinute().orElseThrow()).isBetween(-0.7, -0.6);
    assertThat(result.driftStandardErrorMillivoltsPerMinute().orElseThrow()).isBetween(1e-3, 0.1);
  }

  @Test
  void aDriftWaitsUntilTheCreepIsOverAndIsCloserToTheRest() {
    Result result = result("drift");
    assertThat(result.flags()).isEmpty();
    assertThat(result.quality()).isEqualTo(1);
    assertThat(result.elapsedSeconds()).isGreaterThan(seconds("consecutive") + 60);
    assertThat(result.driftMillivoltsPerMinute().orElseThrow()).isBetween(-0.2, 0.0);
    assertThat(offRest("drift")).isLessThan(offRest("consecutive") / 5);
    assertThat(result.rule()).isEqualTo("drift within 0.2 mV/min over 60 s");
  }

  @Test
  void aToleranceOverAMinuteWaitsForTheMinute() {
    // 2·e^(−T/30)·(e^2 − 1) = 0.1 mV: T = 145.5 s.
    assertThat(seconds("minute")).isEqualTo(146);
    assertThat(result("minute").rule()).isEqualTo("consecutive 10 within 0.1 mV for 60 s");
  }

  @Test
  void aPercentageIsItsMillivoltsOnTheSlopeOfTheCalibrationInForce() {
    assertThat(result("percent").calibration().orElseThrow().slopeMillivoltsPerDecade())
        .isCloseTo(-40 / Math.log10(20), within(1e-9));
    assertThat(seconds("percent")).isEqualTo(seconds("same"));
    assertThat(result("percent").millivolts()).isEqualTo(result("same").millivolts());
    // Half the slope is half the tolerance: 30 s · ln 1.92 later.
    assertThat(seconds("percent") - seconds("ideal")).isCloseTo(19.6, within(1.0));
  }

  @Test
  void allOfWaitsForTheDriftAndAnyOfDoesNot() {
    assertThat(seconds("all")).isEqualTo(seconds("drift"));
    assertThat(result("all").flags()).isEmpty();
    assertThat(result("all").rule())
        .isEqualTo("all of (consecutive 10 within 0.1 mV, drift within 0.2 mV/min over 60 s)");
    assertThat(seconds("any")).isEqualTo(seconds("consecutive"));
    assertThat(result("any").flags()).containsExactly("creeping");
    assertThat(result("any").millivolts()).isEqualTo(result("consecutive").millivolts());
  }

  @Test
  void aCombinationThatIsGivenUpSaysWhatDidNotHold() {
    Result result = result("hasty");
    assertThat(result.outcome()).isEqualTo(Result.Outcome.UNSETTLED);
    assertThat(result.reasons().get(0).text())
        .endsWith(
            "the rule is all of (consecutive 10 within 0.1 mV, drift within 0.2 mV/min over 60 s),"
                + " and what does not hold is drift within 0.2 mV/min over 60 s");
  }
}
