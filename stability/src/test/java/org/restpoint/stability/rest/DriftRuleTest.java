package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.restpoint.stability.rest.Traces.SECOND;
import static org.restpoint.stability.rest.Traces.SLOPE;

import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DriftRuleTest {

  private static final Duration MINUTE = Duration.ofMinutes(1);

  /** Readings each second of a potential that moves so many mV a minute. */
  private static boolean ramp(RestDetector detector, int from, int to, double perMinute) {
    boolean rest = false;
    for (int second = from; second <= to; second++) {
      rest = detector.accept(second * SECOND, 100 + perMinute * second / 60);
    }
    return rest;
  }

  @Test
  void aDriftOfTheLimitIsAtRestAndAFasterOneIsNot() {
    // No scatter, so the standard error is nothing but rounding.
    assertThat(ramp(new DriftRule(0.2, MINUTE).detector(SLOPE), 0, 60, 0.2)).isTrue();
    assertThat(ramp(new DriftRule(0.2, MINUTE).detector(SLOPE), 0, 60, -0.2)).isTrue();
    assertThat(ramp(new DriftRule(0.2, MINUTE).detector(SLOPE), 0, 60, 0.2001)).isFalse();
    assertThat(ramp(new DriftRule(0.2, MINUTE).detector(SLOPE), 0, 60, -0.2001)).isFalse();
  }

  @Test
  void itIsNotAtRestBeforeItsWindowIsFull() {
    RestDetector detector = new DriftRule(0.2, MINUTE).detector(SLOPE);
    for (int second = 0; second < 60; second++) {
      assertThat(detector.accept(second * SECOND, 5)).as("second %d", second).isFalse();
    }
    assertThat(detector.accept(60 * SECOND, 5)).isTrue();
  }

  @Test
  void itIsNotAtRestWithFewerReadingsThanAskedFor() {
    RestDetector five = new DriftRule(0.2, MINUTE).detector(SLOPE);
    RestDetector four = new DriftRule(0.2, MINUTE, 1, 4).detector(SLOPE);
    for (int i = 0; i < 10; i++) {
      // Each window of a minute holds four readings, the one at its beginning among them.
      boolean full = i >= 3;
      assertThat(five.accept(i * 20L * SECOND, 5)).isFalse();
      assertThat(four.accept(i * 20L * SECOND, 5)).as("reading %d", i).isEqualTo(full);
    }
  }

  @Test
  void aPauseLongerThanHalfTheWindowIsNotLookedAcross() {
    RestDetector detector = new DriftRule(0.2, MINUTE).detector(SLOPE);
    assertThat(ramp(detector, 0, 100, 0)).isTrue();
    assertThat(detector.accept(130 * SECOND, 100)).isTrue();
    assertThat(detector.accept(161 * SECOND, 100)).isFalse();
    for (int second = 162; second < 221; second++) {
      assertThat(detector.accept(second * SECOND, 100)).as("second %d", second).isFalse();
    }
    assertThat(detector.accept(221 * SECOND, 100)).isTrue();
  }

  @Test
  void readingsOfOneInstantHaveNoDrift() {
    RestDetector detector = new DriftRule(0.2, Duration.ofNanos(1)).detector(SLOPE);
    for (int i = 0; i < 10; i++) {
      assertThat(detector.accept(SECOND, 5)).isFalse();
    }
    assertThat(detector.progress().drift()).isEmpty();
  }

  @Test
  void theStandardErrorCountsAsOftenAsAskedFor() {
    // ±0.1 mV in turn: no drift but a standard error.
    double[] millivolts = new double[61];
    for (int i = 0; i < millivolts.length; i++) {
      millivolts[i] = i % 2 == 0 ? 0.1 : -0.1;
    }
    RestDetector seen = new DriftRule(100, MINUTE).detector(SLOPE);
    Traces.feed(seen, millivolts);
    Drift drift = seen.potential().drift().orElseThrow();
    double error = drift.standardErrorMillivoltsPerMinute().orElseThrow();
    // Symmetric about the middle, so the drift is 0; √(Σv²/59/Stt), Stt = 18910 s².
    assertThat(drift.millivoltsPerMinute()).isCloseTo(0, within(1e-12));
    double squares = 0.61 - 0.01 / 61;
    assertThat(error).isCloseTo(60 * Math.sqrt(squares / 59 / 18_910), within(1e-12));
    assertThat(Traces.feed(new DriftRule(2.01 * error, MINUTE, 2, 5).detector(SLOPE), millivolts))
        .isTrue();
    assertThat(Traces.feed(new DriftRule(1.99 * error, MINUTE, 2, 5).detector(SLOPE), millivolts))
        .isFalse();
    assertThat(Traces.feed(new DriftRule(1e-6, MINUTE, 0, 5).detector(SLOPE), millivolts)).isTrue();
  }

  @Test
  void theRestingPotentialIsTheLinesEndAndItsUncertaintyKnowsTheLimit() {
    RestDetector detector = new DriftRule(3, Duration.ofSeconds(4), 1, 5).detector(SLOPE);
    assertThat(Traces.feed(detector, 7.0, 7.1, 7.0, 7.1, 7.1)).isTrue();
    RestingPotential potential = detector.potential();
    // t −2 … 2 s, Stt = 10 s², mean 7.06, Stv = 0.2: 0.02 mV/s; the end is 7.06 + 0.04.
    assertThat(potential.millivolts()).isCloseTo(7.1, within(1e-12));
    // Svv = 0.012, s² = (0.012 − 0.004)/3; s²·(1/5 + 4/10); 3 mV/min over 4 s are 0.2 mV.
    assertThat(potential.standardUncertaintyMillivolts())
        .isCloseTo(Math.sqrt(0.008 / 3 * 0.6 + 0.04 / 3), within(1e-12));
    assertThat(potential.forecast()).isFalse();
    assertThat(potential.creeping()).isFalse();
    assertThat(potential.spreadMillivolts()).isCloseTo(0.1, within(1e-12));
  }

  @Test
  void anApproachSlowerThanTheWindowAllowsIsStillCoveredByTheUncertainty() {
    // Time constant 60 s, a window of 60 s: what is left at the decision is within D·T.
    DriftRule rule = new DriftRule(0.2, MINUTE);
    RestDetector detector = rule.detector(SLOPE);
    int second = 0;
    while (!detector.accept(second * SECOND, 150 + 40 * Math.exp(-second / 60.0))) {
      second++;
    }
    assertThat(detector.potential().millivolts() - 150)
        .isPositive()
        .isLessThan(rule.wayMillivolts());
  }

  @Test
  void itWaitsWhereATimelessToleranceCallsACreepAtRest() {
    double consecutive =
        Traces.decision(new ConsecutiveRule(10, 0.1), Traces.every(1000), s -> 80 + 0.01 * s);
    double drift =
        Traces.decision(new DriftRule(0.2, MINUTE), Traces.every(1000), s -> 80 + 0.01 * s);
    assertThat(consecutive).isEqualTo(9);
    assertThat(drift).isInfinite();
  }

  @Test
  void theSamplingIntervalDoesNotChangeWhenTheSlopeAloneDecides() {
    DriftRule rule = new DriftRule(0.2, MINUTE, 0, 5);
    double slow = Traces.decision(rule, Traces.every(1000), Traces::approach);
    double fast = Traces.decision(rule, Traces.every(200), Traces::approach);
    assertThat(fast).isCloseTo(slow, within(1.0));
    for (int seed = 0; seed < 50; seed++) {
      double uneven = Traces.decision(rule, Traces.unevenly(seed), Traces::approach);
      assertThat(uneven).as("seed %d", seed).isCloseTo(slow, within(1.0));
    }
  }

  @Test
  void ofDriftsAtTheLimitOneInSixPasses() {
    // One-sided, t of 59 degrees of freedom beyond 1: 0.161.
    Random random = new Random(3);
    int windows = 20_000;
    int passed = 0;
    for (int i = 0; i < windows; i++) {
      RestDetector detector = new DriftRule(5, MINUTE).detector(SLOPE);
      boolean rest = false;
      for (int second = 0; second <= 60; second++) {
        rest = detector.accept(second * SECOND, 5 * second / 60.0 + 0.1 * random.nextGaussian());
      }
      passed += rest ? 1 : 0;
    }
    // Four standard deviations of the count, √(20 000 · 0.161 · 0.839) = 52.
    assertThat(passed).isBetween(3220 - 4 * 52, 3220 + 4 * 52);
  }

  @Test
  void aRuleThatCannotBeIsRefused() {
    for (double limit : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> new DriftRule(limit, MINUTE))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("a limit of drift is above 0 mV/min, not " + limit);
    }
    assertThatThrownBy(() -> new DriftRule(1, Duration.ZERO))
        .hasMessage("a drift needs a window longer than 0 s");
    assertThatThrownBy(() -> new DriftRule(1, Duration.ofDays(2)))
        .hasMessage("a window is 0 s to 1 day long, not 172800 s");
    for (double errors : new double[] {-0.1, 10.1, Double.NaN}) {
      assertThatThrownBy(() -> new DriftRule(1, MINUTE, errors, 5))
          .hasMessage("the rule adds 0 to 10 standard errors, not " + errors);
    }
    for (int readings : new int[] {2, 100_001}) {
      assertThatThrownBy(() -> new DriftRule(1, MINUTE, 1, readings))
          .hasMessage("the rule needs 3 to 100000 readings, not " + readings);
    }
  }

  @Test
  void itIsDescribedWithWhatIsUnusual() {
    assertThat(new DriftRule(0.2, MINUTE).describe())
        .isEqualTo("drift within 0.2 mV/min over 60 s");
    assertThat(new DriftRule(1, MINUTE, 2, 30).describe())
        .isEqualTo(
            "drift within 1 mV/min over 60 s with 2 standard errors of 30 readings at least");
  }

  @Test
  void anElectrodeHasLeftItsRestBeyondThreeTimesWhatTheLimitLetsPass() {
    assertThat(new DriftRule(0.2, Duration.ofSeconds(30)).restBandMillivolts(SLOPE))
        .isCloseTo(0.3, within(1e-12));
  }

  @Test
  void aStraightRampAtTheLimitMeetsItWhateverTheStandardErrorsOfItsRounding() {
    for (double start : new double[] {-250, 80, 1000}) {
      for (double limit : new double[] {0.05, 0.1, 0.3, 3}) {
        RestDetector detector = new DriftRule(limit, Duration.ofSeconds(75), 3, 5).detector(SLOPE);
        boolean rest = false;
        for (int i = 0; i <= 400; i++) {
          rest = detector.accept(i * SECOND, start + limit / 60 * i);
        }
        assertThat(rest).as("%s mV/min from %s mV", limit, start).isTrue();
      }
    }
  }
}
