package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class SlidingWindowPropertyTest {

  private static final long SECOND = 1_000_000_000L;

  /** A reading: s since the one before, and mV. */
  record Step(int seconds, double millivolts) {}

  @Provide
  Arbitrary<List<Step>> steps() {
    Arbitrary<Integer> seconds =
        Arbitraries.frequencyOf(
            Tuple.of(8, Arbitraries.integers().between(0, 3)),
            Tuple.of(1, Arbitraries.integers().between(10, 100)));
    Arbitrary<Double> millivolts =
        Arbitraries.frequencyOf(
            Tuple.of(9, Arbitraries.doubles().between(-1, 1).ofScale(3)),
            Tuple.of(1, Arbitraries.doubles().between(-1e6, 1e6).ofScale(1)));
    return Combinators.combine(seconds, millivolts).as(Step::new).list().ofMaxSize(150);
  }

  /** The place of the oldest reading the window is to hold, in the words of its description. */
  private static int begin(long[] nanos, int last, int leastReadings, long span) {
    int begin = 0;
    for (int i = 1; i <= last; i++) {
      if (nanos[i] <= nanos[last] - span && last - i + 1 >= leastReadings) {
        begin = i;
      }
    }
    return begin;
  }

  /** Compares with two passes over the readings themselves. */
  private static void assertAgrees(
      SlidingWindow window, long[] nanos, double[] millivolts, int begin, int last) {
    Moments seen = window.readings();
    int n = last - begin + 1;
    assertThat(seen.count()).isEqualTo(n);
    assertThat(seen.firstNanos()).isEqualTo(nanos[begin]);
    double minutes = 0;
    double mean = 0;
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    long pause = 0;
    for (int i = begin; i <= last; i++) {
      minutes += (nanos[i] - nanos[begin]) / 60e9 / n;
      mean += millivolts[i] / n;
      lowest = Math.min(lowest, millivolts[i]);
      highest = Math.max(highest, millivolts[i]);
      pause = i == begin ? 0 : Math.max(pause, nanos[i] - nanos[i - 1]);
    }
    double tt = 0;
    double tv = 0;
    double vv = 0;
    for (int i = begin; i <= last; i++) {
      double t = (nanos[i] - nanos[begin]) / 60e9 - minutes;
      double v = millivolts[i] - mean;
      tt += t * t;
      tv += t * v;
      vv += v * v;
    }
    assertThat(seen.spread()).isEqualTo(highest - lowest);
    assertThat(seen.longestPauseNanos()).isEqualTo(pause);
    // Rounding: 10⁻¹² of the largest potential in the window, 10⁻¹¹ of the sums of squares, and
    // 10⁻¹⁴ of the potentials in each of their differences.
    double largest = Math.max(Math.abs(lowest), Math.abs(highest));
    assertThat(Math.abs(seen.meanMillivolts() - mean)).isLessThanOrEqualTo(1e-12 * largest);
    assertThat(seen.hasSlope()).isEqualTo(nanos[last] > nanos[begin]);
    if (seen.hasSlope()) {
      double slope = tv / tt;
      double scale = Math.sqrt(vv / tt);
      double rounding = 1e-14 * largest / Math.sqrt(tt);
      assertThat(Math.abs(seen.slope() - slope)).isLessThanOrEqualTo(1e-11 * scale + rounding);
      if (n > 2) {
        double squares = 0;
        for (int i = begin; i <= last; i++) {
          double t = (nanos[i] - nanos[begin]) / 60e9 - minutes;
          double off = millivolts[i] - mean - slope * t;
          squares += off * off;
        }
        double error = seen.slopeStandardError();
        assertThat(Math.abs(error * error - squares / (n - 2) / tt))
            .isLessThanOrEqualTo(1e-11 * scale * scale + rounding * scale);
      }
    }
  }

  @Property
  void itAgreesWithTwoPassesOverTheReadingsOfAnySequence(
      @ForAll("steps") List<Step> steps,
      @ForAll @IntRange(min = 1, max = 30) int leastReadings,
      @ForAll @IntRange(max = 60) int seconds) {
    SlidingWindow window = new SlidingWindow(leastReadings, seconds * SECOND);
    long[] nanos = new long[steps.size()];
    double[] millivolts = new double[steps.size()];
    long at = 0;
    for (int i = 0; i < steps.size(); i++) {
      at += steps.get(i).seconds() * SECOND;
      nanos[i] = at;
      millivolts[i] = steps.get(i).millivolts();
      window.take(nanos[i], millivolts[i]);
      int begin = begin(nanos, i, leastReadings, seconds * SECOND);
      assertAgrees(window, nanos, millivolts, begin, i);
      boolean full = i - begin + 1 >= leastReadings && at - nanos[begin] >= seconds * SECOND;
      assertThat(window.isFull()).isEqualTo(full);
    }
  }

  @Test
  void millionsOfReadingsAndSpikesLeaveNoRoundingErrorBehind() {
    int readings = 3_000_000;
    long[] nanos = new long[readings];
    double[] millivolts = new double[readings];
    Random random = new Random(5);
    SlidingWindow window = new SlidingWindow(1, 60 * SECOND);
    int compared = 0;
    for (int i = 0; i < readings; i++) {
      nanos[i] = i * SECOND;
      millivolts[i] = i % 10_007 == 0 ? 1e6 : 180 + 1e-3 * random.nextGaussian();
      window.take(nanos[i], millivolts[i]);
      if (i % 997 == 996) {
        assertAgrees(window, nanos, millivolts, i - 60, i);
        compared++;
      }
    }
    assertThat(compared).isEqualTo(readings / 997);
  }

  @Test
  void moreReadingsThanPlacesKeepTheirExtremesMeansAndSums() {
    int readings = 60_000;
    long[] nanos = new long[readings];
    double[] millivolts = new double[readings];
    Random random = new Random(6);
    long span = 10 * SECOND;
    SlidingWindow window = new SlidingWindow(1, span);
    long at = 0;
    for (int i = 0; i < readings; i++) {
      at += random.nextInt(2_000_000);
      nanos[i] = at;
      millivolts[i] = random.nextInt(1000) == 0 ? 50 : random.nextGaussian();
      window.take(at, millivolts[i]);
      if (i > 0 && i % 499 == 0) {
        int begin = i + 1 - (int) window.readings().count();
        assertAgrees(window, nanos, millivolts, begin, i);
        if (begin > 0) {
          // It covers the span, and reaches back further by one place at most.
          assertThat(at - nanos[begin]).isBetween(span, span + span / 512 + 2_000_000);
        }
      }
    }
    assertThat(window.readings().count()).isGreaterThan(SlidingWindow.LEAST_PLACES);
  }
}
