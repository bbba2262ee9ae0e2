package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.restpoint.stability.rest.Traces.SECOND;
import static org.restpoint.stability.rest.Traces.SLOPE;

import java.time.Duration;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class CombinationTest {

  private static final RestRule CONSECUTIVE = new ConsecutiveRule(10, 0.1);
  private static final RestRule DRIFT = new DriftRule(0.2, Duration.ofSeconds(60));

  @Test
  void allOfDecidesWithTheLastOfItsRulesAndAnyOfWithTheFirst() {
    double consecutive = Traces.decision(CONSECUTIVE, Traces.every(1000), Traces::approach);
    double drift = Traces.decision(DRIFT, Traces.every(1000), Traces::approach);
    assertThat(drift).isGreaterThan(consecutive + 20);
    for (List<RestRule> rules : List.of(List.of(CONSECUTIVE, DRIFT), List.of(DRIFT, CONSECUTIVE))) {
      assertThat(Traces.decision(new AllOf(rules), Traces.every(1000), Traces::approach))
          .isEqualTo(drift);
      assertThat(Traces.decision(new AnyOf(rules), Traces.every(1000), Traces::approach))
          .isEqualTo(consecutive);
    }
  }

  @Test
  void rulesThatHoldOneAfterTheOtherButNeverTogetherAreNotAllAtRest() {
    // Two alike, or three rising: never with the same reading.
    RestRule alike = new ConsecutiveRule(2, 0);
    RestRule level = new ConsecutiveRule(3, 0.5);
    RestDetector detector = new AllOf(List.of(alike, level)).detector(SLOPE);
    double[] millivolts = {1, 1, 1.2, 1.4, 5, 5, 5.3, 5.2};
    boolean[] rest = new boolean[millivolts.length];
    for (int i = 0; i < millivolts.length; i++) {
      rest[i] = detector.accept(i * SECOND, millivolts[i]);
    }
    assertThat(rest).containsOnly(false);
  }

  @Test
  void allOfTakesThePotentialOfTheSmallestUncertainty() {
    RestRule wide = new ConsecutiveRule(5, 1);
    RestRule narrow = new ConsecutiveRule(2, 0.3);
    RestDetector detector = new AllOf(List.of(wide, narrow)).detector(SLOPE);
    assertThat(Traces.feed(detector, 6, 6, 6, 6.2, 6.4)).isTrue();
    // The narrow one's: mean of the last two; s² = 0.02.
    assertThat(detector.potential().millivolts()).isCloseTo(6.3, within(1e-12));
    assertThat(detector.potential().standardUncertaintyMillivolts())
        .isCloseTo(Math.sqrt(0.02 / 2 + 0.09 / 3), within(1e-12));
    assertThat(detector.progress().spreadMillivolts()).isCloseTo(0.2, within(1e-12));
  }

  @Test
  void anyOfTakesThePotentialOfTheFirstInTheListThatHolds() {
    RestRule wide = new ConsecutiveRule(5, 1);
    RestRule narrow = new ConsecutiveRule(2, 0.3);
    RestDetector detector = new AnyOf(List.of(wide, narrow)).detector(SLOPE);
    assertThat(Traces.feed(detector, 6, 6, 6, 6.2, 6.4)).isTrue();
    assertThat(detector.potential().millivolts()).isCloseTo(6.12, within(1e-12));
    RestDetector early = new AnyOf(List.of(wide, narrow)).detector(SLOPE);
    assertThat(Traces.feed(early, 4, 6, 6.2)).isTrue();
    assertThat(early.potential().millivolts()).isCloseTo(6.1, within(1e-12));
  }

  @Test
  void aDriftRuleThatHoldsIsBelievedAgainstACreepSeenInAShortWindow() {
    // 0.15 mV/min: within the limit, yet out of 0.1 mV in five minutes.
    RestDetector all = new AllOf(List.of(CONSECUTIVE, DRIFT)).detector(SLOPE);
    RestDetector any = new AnyOf(List.of(CONSECUTIVE, DRIFT)).detector(SLOPE);
    boolean rest = false;
    for (int i = 0; i <= 60; i++) {
      rest = all.accept(i * SECOND, 80 + 0.0025 * i);
      any.accept(i * SECOND, 80 + 0.0025 * i);
    }
    assertThat(rest).isTrue();
    assertThat(all.potential().creeping()).isFalse();
    assertThat(all.progress().creeping()).isFalse();
    assertThat(any.potential().creeping()).isTrue();
    assertThat(any.progress().creeping()).isTrue();
  }

  @Test
  void aCreepThatEveryRuleSeesIsACreep() {
    RestDetector detector =
        new AllOf(List.of(CONSECUTIVE, new ConsecutiveRule(20, 0.5))).detector(SLOPE);
    boolean rest = false;
    for (int i = 0; i <= 60; i++) {
      rest = detector.accept(i * SECOND, 80 + 0.01 * i);
    }
    assertThat(rest).isTrue();
    assertThat(detector.potential().creeping()).isTrue();
  }

  @Test
  void everyRuleTellsWhatItSaw() {
    RestDetector detector = new AllOf(List.of(CONSECUTIVE, DRIFT)).detector(SLOPE);
    for (int i = 0; i <= 30; i++) {
      detector.accept(i * SECOND, 80 + 0.01 * i);
    }
    RestProgress progress = detector.progress();
    assertThat(progress.atRest()).isFalse();
    assertThat(progress.readings()).isEqualTo(31);
    assertThat(progress.members())
        .extracting(RestProgress.Member::rule)
        .containsExactly("consecutive 10 within 0.1 mV", "drift within 0.2 mV/min over 60 s");
    assertThat(progress.members())
        .extracting(member -> member.progress().atRest())
        .containsExactly(true, false);
    // What is waited for is the drift: its window holds all thirty seconds.
    assertThat(progress.spreadMillivolts()).isCloseTo(0.3, within(1e-9));
    assertThat(progress.members().get(0).progress().spreadMillivolts())
        .isCloseTo(0.09, within(1e-9));
  }

  @Test
  void combinationsNest() {
    RestRule nested =
        new AnyOf(List.of(new AllOf(List.of(CONSECUTIVE, DRIFT)), new ConsecutiveRule(300, 1)));
    assertThat(nested.describe())
        .isEqualTo(
            "any of (all of (consecutive 10 within 0.1 mV, drift within 0.2 mV/min over 60 s),"
                + " consecutive 300 within 1 mV)");
    RestDetector detector = nested.detector(SLOPE);
    double[] level = new double[61];
    assertThat(Traces.feed(detector, level)).isTrue();
    assertThat(detector.progress().members().get(0).progress().members()).hasSize(2);
    assertThat(detector.potential().millivolts()).isZero();
  }

  @Test
  void allOfKeepsTheNarrowestBandAndAnyOfTheWidest() {
    // 0.3 mV of the tolerance, 0.6 mV of the drift.
    assertThat(new AllOf(List.of(DRIFT, CONSECUTIVE)).restBandMillivolts(SLOPE))
        .isCloseTo(0.3, within(1e-12));
    assertThat(new AnyOf(List.of(CONSECUTIVE, DRIFT)).restBandMillivolts(SLOPE))
        .isCloseTo(0.6, within(1e-12));
  }

  @Test
  void fewerThanTwoRulesOrMoreThanEightAreNoCombination() {
    for (int count : new int[] {0, 1, 9}) {
      List<RestRule> rules = Collections.nCopies(count, DRIFT);
      String message = "a combination is of 2 to 8 rules, not " + count;
      assertThatThrownBy(() -> new AllOf(rules)).hasMessage(message);
      assertThatThrownBy(() -> new AnyOf(rules)).hasMessage(message);
    }
    assertThat(new AllOf(Collections.nCopies(8, DRIFT)).rules()).hasSize(8);
  }

  @Test
  void nothingIsToldBeforeItIsThere() {
    RestDetector detector = new AnyOf(List.of(CONSECUTIVE, DRIFT)).detector(SLOPE);
    assertThatThrownBy(detector::progress).hasMessage("no reading yet");
    detector.accept(0, 1);
    assertThatThrownBy(detector::potential).hasMessage("not at rest");
  }
}
