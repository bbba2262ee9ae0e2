package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Progress;
import org.restpoint.acquisition.event.Result;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.rest.AllOf;
import org.restpoint.stability.rest.ConsecutiveRule;
import org.restpoint.stability.rest.DriftRule;
import org.restpoint.stability.rest.RestRule;
import org.restpoint.stability.rest.Tolerance;

class RestRulesTest {

  private static RestRule percent(double percent) {
    return new ConsecutiveRule(3, new Tolerance.ConcentrationPercent(percent), Duration.ZERO);
  }

  @Test
  void progressTellsWhatEachRuleOfACombinationSees() {
    RestRule both =
        new AllOf(List.of(new ConsecutiveRule(3, 0.1), new DriftRule(0.2, Duration.ofSeconds(60))));
    Bench bench = Bench.of(Setup.nitrate().rule(both)).tell("calibrate", "low");
    bench.read(1, 200).read(1, 200.3).read(3, 200.6);
    Progress told = bench.all(Progress.class).get(bench.all(Progress.class).size() - 1);
    List<Progress.Member> members = told.members().orElseThrow();
    assertThat(members)
        .extracting(Progress.Member::rule)
        .containsExactly("consecutive 3 within 0.1 mV", "drift within 0.2 mV/min over 60 s");
    assertThat(members).extracting(Progress.Member::atRest).containsExactly(true, false);
    assertThat(members.get(0).spreadMillivolts()).isZero();
    assertThat(members.get(1).members()).isEmpty();
    // What is waited for is the drift: t −2 … 2 s, Stv = 1.5, Stt = 10: 0.15 mV/s, about 200.42.
    assertThat(told.spreadMillivolts()).isCloseTo(0.6, within(1e-9));
    assertThat(told.driftMillivoltsPerMinute().orElseThrow()).isCloseTo(9, within(1e-9));
    assertThat(told.driftStandardErrorMillivoltsPerMinute().orElseThrow())
        .isCloseTo(60 * Math.sqrt((0.288 - 0.225) / 3 / 10), within(1e-9));
  }

  @Test
  void aRuleByItselfHasNoMembers() {
    Bench bench = Bench.of(Setup.nitrate()).tell("calibrate", "low").read(2, 200);
    assertThat(bench.all(Progress.class))
        .extracting(Progress::members)
        .containsOnly(Optional.empty());
  }

  @Test
  void withoutACalibrationAPercentageIsTakenOnTheIdealSlopeAt25Degrees() {
    double millivolts = -Nernst.idealSlopeMillivoltsPerDecade(-1, 25) * Math.log10(1 + 2 / 100.0);
    Bench within = Bench.of(Setup.nitrate().rule(percent(2))).tell("calibrate", "low");
    within.read(2, 200).read(1, 200 + millivolts - 1e-6);
    assertThat(within.all(Calibration.class)).hasSize(1);
    Bench beyond = Bench.of(Setup.nitrate().rule(percent(2))).tell("calibrate", "low");
    beyond.read(2, 200).read(1, 200 + millivolts + 1e-6);
    assertThat(beyond.all(Calibration.class)).isEmpty();
  }

  @Test
  void withACalibrationItIsTakenOnItsSlopeAndTheStreamLeavesItsRestByIt() {
    Bench bench =
        Bench.of(
            Setup.nitrate().rule(percent(10)).routine(new Routine.EachRest(Duration.ofHours(1))));
    bench.calibrate("low").calibrate("high").tell("{\"do\":\"rinsed\"}");
    double slope = bench.all(Calibration.class).get(1).slopeMillivoltsPerDecade().orElseThrow();
    double band = 3 * -slope * Math.log10(1.1);
    double rest = bench.millivolts(20);
    bench.read(3, rest).read(5, rest + band - 0.01);
    assertThat(bench.all(Result.class)).hasSize(1);
    bench.read(5, rest + band + 0.01);
    assertThat(bench.all(Result.class)).hasSize(2);
  }

  @Test
  void aStandardThatCreepsIsFlaggedInItsCalibration() {
    Bench bench = Bench.of(Setup.nitrate()).tell("calibrate", "low");
    bench.read(1, 300).read(1, 300.03).read(1, 300.06);
    assertThat(bench.calibration().flags()).contains("creeping");
    bench.tell("calibrate", "low").read(3, 300);
    assertThat(bench.calibration().flags()).doesNotContain("creeping");
  }
}
