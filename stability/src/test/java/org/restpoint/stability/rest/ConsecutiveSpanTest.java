package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.restpoint.stability.rest.Traces.SECOND;
import static org.restpoint.stability.rest.Traces.SLOPE;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

class ConsecutiveSpanTest {

  private static ConsecutiveRule rule(int readings, double within, int seconds) {
    return new ConsecutiveRule(
        readings, new Tolerance.Millivolts(within), Duration.ofSeconds(seconds));
  }

  @Test
  void readingsAlikeAreNotAtRestBeforeTheSpanIsOver() {
    RestDetector detector = rule(3, 0.1, 10).detector(SLOPE);
    for (int second = 0; second < 10; second++) {
      assertThat(detector.accept(second * SECOND, 7)).as("second %d", second).isFalse();
    }
    assertThat(detector.accept(10 * SECOND, 7)).isTrue();
  }

  @Test
  void theSpanBeingOverIsNotEnoughWithTooFewReadings() {
    RestDetector detector = rule(4, 0.1, 10).detector(SLOPE);
    for (int i = 0; i < 3; i++) {
      assertThat(detector.accept(i * 60L * SECOND, 7)).isFalse();
    }
    assertThat(detector.accept(180 * SECOND, 7)).isTrue();
  }

  @Test
  void slowReadingsReachBackFurtherThanTheSpanUntilThereAreEnough() {
    RestDetector detector = rule(4, 0.1, 10).detector(SLOPE);
    double[] millivolts = {9, 7, 7, 7, 7};
    boolean[] rest = new boolean[5];
    for (int i = 0; i < 5; i++) {
      rest[i] = detector.accept(i * 60L * SECOND, millivolts[i]);
    }
    assertThat(rest).containsExactly(false, false, false, false, true);
  }

  @Test
  void aSpikeLeavesWhenAReadingAfterItIsAsOldAsTheSpan() {
    RestDetector detector = rule(2, 0.1, 10).detector(SLOPE);
    detector.accept(0, 7);
    detector.accept(SECOND, 9);
    for (int second = 2; second < 12; second++) {
      assertThat(detector.accept(second * SECOND, 7)).as("second %d", second).isFalse();
    }
    // The reading of second 2 now stands for the window's beginning.
    assertThat(detector.accept(12 * SECOND, 7)).isTrue();
  }

  @Test
  void theReadingBeforeAPauseStandsForThePause() {
    RestDetector detector = rule(2, 0.1, 10).detector(SLOPE);
    detector.accept(0, 9);
    for (int second = 31; second < 41; second++) {
      assertThat(detector.accept(second * SECOND, 7)).as("second %d", second).isFalse();
    }
    assertThat(detector.accept(41 * SECOND, 7)).isTrue();
  }

  @Test
  void theSamplingIntervalDoesNotChangeWhenItDecides() {
    // 40·e^(−T/20)·(e^1.5 − 1) = 0.1: T = 144.8 s.
    ConsecutiveRule rule = rule(10, 0.1, 30);
    double slow = Traces.decision(rule, Traces.every(1000), Traces::approach);
    double fast = Traces.decision(rule, Traces.every(200), Traces::approach);
    assertThat(slow).isEqualTo(145);
    assertThat(fast).isCloseTo(144.8, within(0.2));
    for (int seed = 0; seed < 50; seed++) {
      double uneven = Traces.decision(rule, Traces.unevenly(seed), Traces::approach);
      assertThat(uneven).as("seed %d", seed).isCloseTo(slow, within(1.0));
    }
  }

  @Test
  void byCountAloneAFasterIntervalIsASofterRule() {
    ConsecutiveRule rule = new ConsecutiveRule(10, 0.1);
    double slow = Traces.decision(rule, Traces.every(1000), Traces::approach);
    double fast = Traces.decision(rule, Traces.every(200), Traces::approach);
    assertThat(slow - fast).isGreaterThan(30);
  }

  @Test
  void meanUncertaintyAndDriftAreThoseOfTheWholeWindow() {
    RestDetector detector = rule(2, 0.3, 3).detector(SLOPE);
    assertThat(Traces.feed(detector, 50, 7.0, 7.1, 7.2, 7.1)).isTrue();
    RestingPotential potential = detector.potential();
    // The rounding of four potentials of some mV.
    assertThat(potential.millivolts()).isCloseTo(7.1, within(1e-12));
    assertThat(potential.spreadMillivolts()).isCloseTo(0.2, within(1e-12));
    assertThat(potential.standardUncertaintyMillivolts())
        .isCloseTo(Math.sqrt(0.02 / 12 + 0.03), within(1e-12));
    // Times −1.5 … 1.5 s, Stt = 5 s², Stv = 0.2 mV s: 0.04 mV/s. Svv − Stv²/Stt = 0.02 − 0.008.
    Drift drift = potential.drift().orElseThrow();
    assertThat(drift.millivoltsPerMinute()).isCloseTo(2.4, within(1e-9));
    assertThat(drift.standardErrorMillivoltsPerMinute().orElseThrow())
        .isCloseTo(60 * Math.sqrt(0.012 / 2 / 5), within(1e-9));
    assertThat(detector.progress().atRest()).isTrue();
    assertThat(detector.progress().drift()).contains(drift);
  }

  @Test
  void theSameReadingsByCountAndBySpanGiveTheSamePotential() {
    double[] millivolts = {12, 8.02, 8.05, 8.01, 8.07, 8.04, 8.02};
    RestDetector count = new ConsecutiveRule(6, 0.1).detector(SLOPE);
    RestDetector span = rule(2, 0.1, 5).detector(SLOPE);
    assertThat(Traces.feed(count, millivolts)).isTrue();
    assertThat(Traces.feed(span, millivolts)).isTrue();
    RestingPotential one = count.potential();
    RestingPotential other = span.potential();
    assertThat(other.millivolts()).isCloseTo(one.millivolts(), within(1e-12));
    assertThat(other.standardUncertaintyMillivolts())
        .isCloseTo(one.standardUncertaintyMillivolts(), within(1e-12));
    Drift drift = one.drift().orElseThrow();
    assertThat(other.drift().orElseThrow().millivoltsPerMinute())
        .isCloseTo(drift.millivoltsPerMinute(), within(1e-9));
    assertThat(other.drift().orElseThrow().standardErrorMillivoltsPerMinute().orElseThrow())
        .isCloseTo(drift.standardErrorMillivoltsPerMinute().orElseThrow(), within(1e-9));
    assertThat(other.creeping()).isEqualTo(one.creeping());
  }

  @Test
  void aSpikeAmongMoreReadingsThanThereArePlacesIsNotForgotten() {
    // 10 kHz: 100 000 readings in ten seconds, in 1024 places.
    RestDetector detector = rule(2, 0.1, 10).detector(SLOPE);
    long step = SECOND / 10_000;
    long spike = 33_333;
    long first = -1;
    for (long i = 0; i < 300_000 && first < 0; i++) {
      if (detector.accept(i * step, i == spike ? 9 : 7)) {
        first = i;
      }
    }
    // Ten seconds after the spike, or one place later: 1/512 of ten seconds.
    assertThat(first).isBetween(spike + 100_001, spike + 100_001 + 100_000 / 512);
    assertThat(detector.progress().readings()).isEqualTo(first + 1);
  }

  @Test
  void aBurstOfReadingsDoesNotMakeTheWindowCoarserForSlowOnes() {
    RestDetector detector = rule(2, 0.1, 100).detector(SLOPE);
    long burst = 0;
    for (int i = 0; i < 100_000; i++) {
      burst = i * SECOND / 10_000;
      detector.accept(burst, 7);
    }
    detector.accept(burst + SECOND, 9);
    long since = 2;
    while (!detector.accept(burst + since * SECOND, 7)) {
      since++;
    }
    assertThat(since).isEqualTo(102);
  }

  @Test
  void aSpanThatCannotBeIsRefused() {
    assertThatThrownBy(() -> rule(2, 0.1, -1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a window is 0 s to 1 day long, not -1 s");
    assertThatThrownBy(() -> rule(2, 0.1, 86_401))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a window is 0 s to 1 day long, not 86401 s");
    assertThat(rule(2, 0.1, 86_400).leastSpan()).isEqualTo(Duration.ofDays(1));
  }

  @Test
  void itIsDescribedWithItsSpan() {
    assertThat(rule(10, 0.1, 30).describe()).isEqualTo("consecutive 10 within 0.1 mV for 30 s");
    ConsecutiveRule percent =
        new ConsecutiveRule(5, new Tolerance.ConcentrationPercent(2), Duration.ofMillis(1500));
    assertThat(percent.describe()).isEqualTo("consecutive 5 within 2 % for 1.5 s");
  }

  @Test
  void nothingIsToldBeforeItIsThere() {
    for (RestRule rule : List.of(rule(2, 0.1, 10), new DriftRule(0.2, Duration.ofSeconds(60)))) {
      RestDetector detector = rule.detector(SLOPE);
      assertThatThrownBy(detector::progress).hasMessage("no reading yet");
      detector.accept(0, 1);
      assertThatThrownBy(detector::potential).hasMessage("not at rest");
    }
  }
}
