package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.restpoint.stability.rest.Traces.SECOND;
import static org.restpoint.stability.rest.Traces.SLOPE;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.rest.forecast.Forecast;

/** Electrodes that rest at 150 mV. */
class ForecastRuleTest {

  private static final double REST = 150;
  private static final ForecastRule RULE = new ForecastRule(1);

  /** A decision, and when. */
  private record Decided(double seconds, RestingPotential potential) {}

  private static Decided decide(List<Long> nanos, DoubleUnaryOperator trace) {
    RestDetector detector = RULE.detector(SLOPE);
    for (long at : nanos) {
      if (detector.accept(at, trace.applyAsDouble(at / 1e9))) {
        return new Decided(at / 1e9, detector.potential());
      }
    }
    throw new AssertionError("not at rest within ten minutes");
  }

  private static Decided decide(DoubleUnaryOperator trace) {
    return decide(Traces.every(1000), trace);
  }

  private static double hyperbola(double seconds) {
    return REST + 60 * 5 / (Math.max(0, seconds) + 5);
  }

  private static double membrane(double seconds) {
    return REST + 60 / (Math.sqrt(Math.max(0, seconds) / 0.02) + 1);
  }

  private static double twoExponentials(double seconds) {
    return REST + 50 * Math.exp(-seconds / 6) + 10 * Math.exp(-seconds / 50);
  }

  @Test
  void anExponentialIsForetoldToAFewHundredthsWhileItHasMoreToGo() {
    Decided decided = decide(Traces::approach);
    assertThat(decided.potential().millivolts()).isCloseTo(REST, within(0.05));
    assertThat(Traces.approach(decided.seconds()) - REST).isGreaterThan(0.1);
    assertThat(decided.potential().forecast()).isTrue();
    assertThat(decided.potential().creeping()).isFalse();
    assertThat(decided.potential().standardUncertaintyMillivolts()).isLessThanOrEqualTo(0.5);
  }

  @Test
  void longBeforeItIsAtRestTheForecastIsRightWithinItsUncertainty() {
    RestDetector detector = RULE.detector(SLOPE);
    for (int t = 0; t <= 80; t++) {
      detector.accept(t * SECOND, Traces.approach(t));
      if (t >= 20) {
        Forecast forecast = detector.progress().forecast().orElseThrow();
        double off = Math.abs(forecast.millivolts() - REST);
        assertThat(off).isLessThan(2 * forecast.standardUncertaintyMillivolts());
      }
    }
  }

  /** Of 60 mV these two have 1.9 and 2.7 mV still to go after five minutes. */
  @Test
  void whatNeverComesToRestIsForetold() {
    List<DoubleUnaryOperator> traces =
        List.of(ForecastRuleTest::membrane, t -> REST + 60 * 14 / (t + 14));
    for (DoubleUnaryOperator trace : traces) {
      Decided decided = decide(trace);
      assertThat(decided.potential().millivolts()).isCloseTo(REST, within(1.0));
      assertThat(trace.applyAsDouble(decided.seconds()) - REST).isGreaterThan(1);
    }
  }

  @Test
  void aSlowPartBehindAFastOneIsForetold() {
    Decided decided = decide(ForecastRuleTest::twoExponentials);
    assertThat(decided.potential().millivolts()).isCloseTo(REST, within(0.5));
  }

  @Test
  void filmDiffusionToATenthOfTheActivityIsForetoldThoughItSetsOutAlmostInALine() {
    Decided decided = decide(t -> REST + SLOPE * Math.log10(1 + 9 * Math.exp(-t / 15)));
    assertThat(decided.potential().millivolts()).isCloseTo(REST, within(0.3));
  }

  @Test
  void aStepTenSecondsBeforeTheFirstReadingIsNoHarm() {
    Decided exponential = decide(t -> Traces.approach(t + 10));
    assertThat(exponential.potential().millivolts()).isCloseTo(REST, within(0.1));
    assertThat(decide(t -> hyperbola(t + 10)).potential().millivolts())
        .isCloseTo(REST, within(1.0));
    assertThat(decide(t -> twoExponentials(t + 10)).potential().millivolts())
        .isCloseTo(REST, within(1.0));
  }

  @Test
  void aStepTenSecondsAfterTheFirstReadingBeginsAnew() {
    Decided exponential = decide(t -> t < 10 ? 190 : Traces.approach(t - 10));
    assertThat(exponential.potential().millivolts()).isCloseTo(REST, within(0.1));
    Decided jump = decide(t -> t < 10 ? 210 : twoExponentials(t - 10));
    assertThat(jump.potential().millivolts()).isCloseTo(REST, within(1.0));
    Decided hyperbola = decide(t -> hyperbola(t - 10));
    assertThat(hyperbola.potential().millivolts()).isCloseTo(REST, within(1.0));
  }

  @Test
  void unevenAndFastReadingsForetellTheSame() {
    double even = decide(Traces::approach).seconds();
    Decided fast = decide(Traces.every(200), Traces::approach);
    assertThat(fast.potential().millivolts()).isCloseTo(REST, within(0.05));
    assertThat(fast.seconds()).isBetween(0.5 * even, 1.2 * even);
    for (int seed = 0; seed < 20; seed++) {
      Decided uneven = decide(Traces.unevenly(seed), Traces::approach);
      assertThat(uneven.potential().millivolts()).isCloseTo(REST, within(0.05));
      assertThat(uneven.seconds()).isBetween(0.5 * even, 1.2 * even);
    }
  }

  @Test
  void aPauseOfAMinuteIsNotADisturbance() {
    List<Long> nanos = new ArrayList<>(Traces.every(1000));
    nanos.removeIf(at -> at > 20 * SECOND && at < 80 * SECOND);
    Decided decided = decide(nanos, Traces::approach);
    assertThat(decided.seconds()).isBetween(80.0, 150.0);
    assertThat(decided.potential().millivolts()).isCloseTo(REST, within(0.1));
  }

  @Test
  void aSpikeChangesNothing() {
    Decided without = decide(Traces::approach);
    for (double spike : new double[] {-8, 3, 8, 500}) {
      Decided with = decide(t -> Traces.approach(t) + (t == 25 ? spike : 0));
      assertThat(with.seconds()).isCloseTo(without.seconds(), within(3.0));
      assertThat(with.potential().millivolts()).isCloseTo(REST, within(0.05));
    }
  }

  @Test
  void aReadingThatIsOffIsNotAtRest() {
    RestDetector detector = RULE.detector(SLOPE);
    double[] millivolts = new double[60];
    Arrays.fill(millivolts, REST);
    assertThat(Traces.feed(detector, millivolts)).isTrue();
    assertThat(detector.accept(60 * SECOND, REST + 5)).isFalse();
    assertThat(detector.accept(61 * SECOND, REST)).isTrue();
  }

  @Test
  void aBubbleHalfWayBeginsAnewAndIsNotAveragedAcross() {
    for (double size : new double[] {-15, -5, 5, 15}) {
      DoubleUnaryOperator bubble =
          t -> Traces.approach(t) + (t < 30 ? 0 : size * Math.exp(-(t - 30) / 12));
      Decided decided = decide(bubble);
      assertThat(decided.seconds()).isGreaterThan(90);
      assertThat(decided.potential().millivolts()).isCloseTo(REST, within(1.0));
    }
  }

  @Test
  void anotherSampleHalfWayIsForetoldAndNotTheFirst() {
    Decided decided = decide(t -> t < 25 ? Traces.approach(t) : 90 + 70 * Math.exp(-(t - 25) / 10));
    assertThat(decided.seconds()).isGreaterThan(75);
    assertThat(decided.potential().millivolts()).isCloseTo(90, within(0.1));
  }

  @Test
  void aPotentialThatSwingsIsNotAtRestHoweverWellItsMeanIsKnown() {
    RestDetector detector = new ForecastRule(0.1).detector(SLOPE);
    for (int t = 0; t < 5000; t++) {
      assertThat(detector.accept(t * SECOND, t % 2 == 0 ? 149 : 151)).isFalse();
    }
  }

  /** Each second reading looks like a spike beside the one before: that many are no spikes. */
  @Test
  void aPotentialThatJumpsToAndFroIsNotAtRest() {
    RestDetector detector = new ForecastRule(1).detector(Traces.SLOPE);
    for (int t = 0; t < 300; t++) {
      assertThat(detector.accept(t * Traces.SECOND, t % 2 == 0 ? 200 : 220))
          .as("%d s", t)
          .isFalse();
    }
  }

  @Test
  void theResolutionIsTheLeastUncertainty() {
    Decided coarse = decide(t -> Math.rint(10 * Traces.approach(t)) / 10);
    assertThat(coarse.potential().millivolts()).isCloseTo(REST, within(0.2));
    assertThat(coarse.potential().standardUncertaintyMillivolts())
        .isGreaterThan(0.1 / Math.sqrt(12));
  }

  @Test
  void aPotentialThatStandsIsSoonAtRest() {
    Decided decided = decide(t -> REST);
    assertThat(decided.seconds()).isLessThan(25);
    assertThat(decided.potential().millivolts()).isEqualTo(REST);
    assertThat(decided.potential().spreadMillivolts()).isEqualTo(0);
  }

  @Test
  void aDriftIsFollowedAndNotTakenForAnApproach() {
    Decided decided = decide(t -> Traces.approach(t) + 2 * t / 3600);
    double truth = REST + 2 * decided.seconds() / 3600;
    assertThat(decided.potential().millivolts()).isCloseTo(truth, within(0.2));
  }

  @Test
  void whileItSettlesTheForecastGoesAlong() {
    RestDetector detector = RULE.detector(SLOPE);
    Traces.feed(detector, 190, 188, 186.2, 184.4);
    assertThat(detector.progress().forecast()).isEmpty();
    double before = Double.POSITIVE_INFINITY;
    RestDetector approach = RULE.detector(SLOPE);
    for (int t = 0; t <= 140; t++) {
      approach.accept(t * SECOND, Traces.approach(t));
      if (t % 30 == 0 && t > 0) {
        RestProgress progress = approach.progress();
        Forecast forecast = progress.forecast().orElseThrow();
        assertThat(forecast.standardUncertaintyMillivolts()).isLessThan(before);
        assertThat(progress.readings()).isEqualTo(t + 1);
        assertThat(progress.driftMillivoltsPerMinute().orElseThrow()).isNegative();
        before = forecast.standardUncertaintyMillivolts();
      }
    }
  }

  @Test
  void inACombinationItsForecastIsSeen() {
    RestRule both = new AllOf(List.of(RULE, new ConsecutiveRule(10, 0.1)));
    RestDetector detector = both.detector(SLOPE);
    for (int t = 0; t < 20; t++) {
      detector.accept(t * SECOND, Traces.approach(t));
    }
    assertThat(detector.progress().forecast()).isPresent();
    assertThat(detector.progress().members().get(1).progress().forecast()).isEmpty();
  }

  @Test
  void readingsOfOneInstantAndAbsurdOnesAreBorne() {
    RestDetector detector = RULE.detector(SLOPE);
    for (int i = 0; i < 20; i++) {
      assertThat(detector.accept(0, REST)).isFalse();
    }
    double[] absurd = {1e6, -1e6, 0, 1e6, 1e6, -1e6, -1e6, 3, 3, 3};
    for (int i = 0; i < absurd.length; i++) {
      detector.accept(i * SECOND, absurd[i]);
      assertThat(detector.progress().readings()).isEqualTo(21 + i);
    }
    boolean rest = false;
    for (int t = 10; t < 300 && !rest; t++) {
      rest = detector.accept(t * SECOND, REST);
    }
    assertThat(rest).isTrue();
    assertThat(detector.potential().millivolts()).isCloseTo(REST, within(1e-6));
  }

  @Test
  void itIsDescribedAndRefusesWhatCannotBe() {
    assertThat(RULE.describe()).isEqualTo("forecast within 1 mV");
    ForecastRule percent = new ForecastRule(new Tolerance.ConcentrationPercent(4));
    assertThat(percent.describe()).isEqualTo("forecast within 4 %");
    assertThat(RULE.restBandMillivolts(SLOPE)).isEqualTo(8);
    assertThatThrownBy(() -> new ForecastRule(0))
        .hasMessage("a forecast is never exact: its tolerance is above 0, not 0 mV");
    assertThatThrownBy(() -> RULE.detector(0)).isInstanceOf(IllegalArgumentException.class);
    RestDetector detector = RULE.detector(SLOPE);
    assertThatThrownBy(detector::progress).hasMessage("no reading yet");
    detector.accept(0, 1);
    assertThatThrownBy(detector::potential).hasMessage("not at rest");
  }
}
