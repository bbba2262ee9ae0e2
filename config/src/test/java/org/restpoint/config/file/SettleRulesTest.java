package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.SettleRule;

/** What a station file says of rest. */
class SettleRulesTest {

  private static final SettleRule.Within ONE = new SettleRule.Within.Millivolts(1);

  @TempDir Path folder;

  private SettleRule rule(String settle) {
    String text =
        Fixture.changed(
            "bench.yaml",
            "rule: consecutive, readings: 10, within: 0.1 mV, not-before: 20 s,"
                + " give-up-after: 10 min",
            settle);
    return new Fixture(folder)
        .understood(text)
        .probes()
        .values()
        .iterator()
        .next()
        .electrode()
        .orElseThrow()
        .settle()
        .rule();
  }

  @Test
  void everyRuleOfRestIsUnderstood() {
    SettleRule percent =
        new SettleRule.Consecutive(10, new SettleRule.Within.Percent(2.5), Duration.ofSeconds(30));
    SettleRule usualDrift = new SettleRule.Drift(0.2, Duration.ofMinutes(1), 1, 5);
    SettleRule drift = new SettleRule.Drift(0.07, Duration.ofSeconds(90), 2, 20);
    SettleRule five = new SettleRule.Consecutive(5, 0.1);

    assertThat(rule("rule: consecutive, within: 2.5 %, for: 30 s")).isEqualTo(percent);
    assertThat(rule("rule: drift, below: 0.2 mV/min")).isEqualTo(usualDrift);
    assertThat(
            rule(
                "rule: drift, below: 0.07 mV/min, over: 90 s, standard-errors: 2,"
                    + " readings-at-least: 20"))
        .isEqualTo(drift);
    assertThat(
            rule(
                "rule: all-of, rules: [{ rule: consecutive, readings: 5 }, { rule: drift, below: 0.2 mV/min }]"))
        .isEqualTo(new SettleRule.AllOf(List.of(five, usualDrift)));
    assertThat(
            rule(
                "rule: any-of, rules: [{ rule: consecutive, readings: 5 }, { rule: all-of, rules: [{ rule: drift,"
                    + " below: 0.2 mV/min }, { rule: consecutive, within: 2.5 %, for: 30 s }] }]"))
        .isEqualTo(
            new SettleRule.AnyOf(
                List.of(five, new SettleRule.AllOf(List.of(usualDrift, percent)))));
  }

  @Test
  void theUsualRuleForetellsAndLearns() {
    SettleRule.Within percent = new SettleRule.Within.Percent(4);
    SettleRule.Within half = new SettleRule.Within.Millivolts(0.5);

    assertThat(rule("")).isEqualTo(new SettleRule.Forecast(ONE, true));
    assertThat(rule("rule: forecast")).isEqualTo(rule(""));
    assertThat(rule("within: 500 uV")).isEqualTo(new SettleRule.Forecast(half, true));
    assertThat(rule("rule: forecast, within: 4 %, learn: false"))
        .isEqualTo(new SettleRule.Forecast(percent, false));
    assertThat(rule("learn: true, give-up-after: 5 min")).isEqualTo(rule(""));
  }

  @Test
  void inACombinationAForecastDoesNotLearn() {
    assertThat(rule("rule: all-of, rules: [{}, { rule: consecutive, readings: 5 }]"))
        .isEqualTo(
            new SettleRule.AllOf(
                List.of(new SettleRule.Forecast(ONE, false), new SettleRule.Consecutive(5, 0.1))));
  }

  @Test
  void aCombinationWaitsAsLongAsItsRulesMust() {
    SettleRule short5 = new SettleRule.Drift(1, Duration.ofSeconds(5), 1, 5);
    SettleRule long9 = new SettleRule.Drift(1, Duration.ofSeconds(9), 1, 5);

    assertThat(new SettleRule.AllOf(List.of(short5, long9)).shortestWait()).hasSeconds(9);
    assertThat(new SettleRule.AnyOf(List.of(long9, short5)).shortestWait()).hasSeconds(5);

    SettleRule forecast = new SettleRule.Forecast(ONE, false);
    assertThat(new SettleRule.AllOf(List.of(short5, forecast)).shortestWait()).hasSeconds(8);
    assertThat(new SettleRule.AnyOf(List.of(long9, forecast)).shortestWait()).hasSeconds(8);
  }
}
