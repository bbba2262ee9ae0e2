package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.restpoint.stability.rest.Traces.SECOND;
import static org.restpoint.stability.rest.Traces.SLOPE;

import java.time.Duration;
import java.util.Arrays;
import java.util.Comparator;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class DriftTest {

  /** Published x taken as minutes, in order, and y as mV, all in one window. */
  private static SlidingWindow window(double[] minutes, double[] millivolts) {
    SlidingWindow window = new SlidingWindow(1, Duration.ofDays(1).toNanos());
    int[] order =
        IntStream.range(0, minutes.length)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> minutes[i]))
            .mapToInt(Integer::intValue)
            .toArray();
    for (int i : order) {
      window.take(Math.round(minutes[i] * 60e9), millivolts[i]);
    }
    assertThat(window.readings().count()).isEqualTo(minutes.length);
    return window;
  }

  @Test
  void itIsTheCertifiedSlopeOfNorrisWithItsStandardDeviation() {
    Published norris = Published.table("norris");
    double[] minutes = norris.numbers("x");
    Drift drift = window(minutes, norris.numbers("y")).readings().drift().orElseThrow();
    // Ten digits of the certified values; 36 sums of products of four digits round below that.
    assertThat(drift.millivoltsPerMinute()).isCloseTo(1.00211681802045, within(1e-10));
    assertThat(drift.standardErrorMillivoltsPerMinute().orElseThrow())
        .isCloseTo(0.429796848199937e-3, within(1e-13));
  }

  @Test
  void bothDetectorsGiveTheCertifiedSlopeOfNorris() {
    Published norris = Published.table("norris");
    double[] x = norris.numbers("x");
    double[] y = norris.numbers("y");
    Integer[] order = IntStream.range(0, x.length).boxed().toArray(Integer[]::new);
    Arrays.sort(order, Comparator.comparingDouble(i -> x[i]));
    RestDetector count = new ConsecutiveRule(x.length, 1e6).detector(SLOPE);
    RestDetector drift = new DriftRule(2, Duration.ofDays(1)).detector(SLOPE);
    for (int i : order) {
      count.accept(Math.round(x[i] * 60e9), y[i]);
      drift.accept(Math.round(x[i] * 60e9), y[i]);
    }
    for (RestDetector detector : new RestDetector[] {count, drift}) {
      RestProgress seen = detector.progress();
      assertThat(seen.driftMillivoltsPerMinute().orElseThrow())
          .isCloseTo(1.00211681802045, within(1e-10));
      assertThat(seen.driftStandardErrorMillivoltsPerMinute().orElseThrow())
          .isCloseTo(0.429796848199937e-3, within(1e-13));
    }
  }

  @Test
  void theLinesValueAndItsUncertaintyAreThoseOfTheGuidesThermometer() {
    Published thermometer = Published.table("thermometer");
    double[] minutes = thermometer.numbers("celsius");
    Moments line = window(minutes, thermometer.numbers("correction")).readings();
    // The document's last printed digits. Minutes count from the first reading.
    double first = Arrays.stream(minutes).min().orElseThrow();
    assertThat(line.slope()).isCloseTo(0.00218, within(0.000005));
    assertThat(line.slopeStandardError()).isCloseTo(0.00067, within(0.000005));
    assertThat(line.lineAt(30 - first)).isCloseTo(-0.1494, within(0.00005));
    assertThat(Math.sqrt(line.varianceOfLineAt(30 - first))).isCloseTo(0.0041, within(0.00005));
    assertThat(line.lineAt(20 - first)).isCloseTo(-0.1712, within(0.00005));
    assertThat(Math.sqrt(line.varianceOfLineAt(20 - first))).isCloseTo(0.0029, within(0.00005));
  }

  @Test
  void aSlowCreepWithinTheToleranceIsFlaggedByEitherWindow() {
    // 0.6 mV/min: ten readings span 0.09 mV, and five minutes of it are 3 mV.
    for (RestRule rule :
        new RestRule[] {
          new ConsecutiveRule(10, 0.1),
          new ConsecutiveRule(2, new Tolerance.Millivolts(0.1), Duration.ofSeconds(9))
        }) {
      RestDetector detector = rule.detector(SLOPE);
      boolean rest = false;
      for (int i = 0; i < 100; i++) {
        rest = detector.accept(i * SECOND, 80 - 0.01 * i);
      }
      assertThat(rest).isTrue();
      assertThat(detector.potential().creeping()).isTrue();
      assertThat(detector.progress().creeping()).isTrue();
    }
  }

  @Test
  void readingsAllAlikeDoNotCreepEvenWithNoTolerance() {
    RestDetector detector = new ConsecutiveRule(10, 0).detector(SLOPE);
    Traces.feed(detector, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7);
    assertThat(detector.potential().creeping()).isFalse();
    assertThat(detector.potential().drift()).contains(new Drift(0, OptionalDouble.of(0)));
  }

  @Test
  void whiteNoiseAloneIsFlaggedOnceInTwentyWindows() {
    Random random = new Random(11);
    int windows = 20_000;
    int flagged = 0;
    for (int i = 0; i < windows; i++) {
      RestDetector detector = new ConsecutiveRule(60, 1e-3).detector(SLOPE);
      for (int j = 0; j < 60; j++) {
        detector.accept(j * SECOND, random.nextGaussian());
      }
      flagged += detector.progress().creeping() ? 1 : 0;
    }
    // Student's t is beyond its quantile with a probability of 0.05; the count's standard deviation
    // is 31.
    assertThat(flagged).isBetween(1000 - 4 * 31, 1000 + 4 * 31);
  }

  @Test
  void noiseThatHangsTogetherIsFlaggedMoreOftenNotLess() {
    Random random = new Random(12);
    int flagged = 0;
    for (int i = 0; i < 2000; i++) {
      RestDetector detector = new ConsecutiveRule(60, 1e-3).detector(SLOPE);
      double at = 0;
      for (int j = 0; j < 60; j++) {
        at = 0.9 * at + random.nextGaussian();
        detector.accept(j * SECOND, at);
      }
      flagged += detector.progress().creeping() ? 1 : 0;
    }
    assertThat(flagged).isGreaterThan(1000);
  }
}
