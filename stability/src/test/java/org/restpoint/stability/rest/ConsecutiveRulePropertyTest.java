package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.IntRange;

class ConsecutiveRulePropertyTest {

  /** What the rule says in its own words: the last n readings, none of them kept in any order. */
  private static boolean alike(int[] hundredths, int last, int readings, int tolerance) {
    if (last + 1 < readings) {
      return false;
    }
    int lowest = Integer.MAX_VALUE;
    int highest = Integer.MIN_VALUE;
    for (int i = last + 1 - readings; i <= last; i++) {
      lowest = Math.min(lowest, hundredths[i]);
      highest = Math.max(highest, hundredths[i]);
    }
    return highest - lowest <= tolerance;
  }

  /** Readings in hundredths of a millivolt: rising, falling, level and jumping. */
  @Provide
  Arbitrary<int[]> traces() {
    Arbitrary<Integer> steps =
        Arbitraries.frequencyOf(
            Tuple.of(6, Arbitraries.integers().between(-2, 2)),
            Tuple.of(2, Arbitraries.just(0)),
            Tuple.of(1, Arbitraries.integers().between(-5000, 5000)));
    return steps
        .list()
        .ofMaxSize(120)
        .map(
            list -> {
              int[] trace = new int[list.size()];
              int at = 0;
              for (int i = 0; i < trace.length; i++) {
                at += list.get(i);
                trace[i] = at;
              }
              return trace;
            });
  }

  @Property
  void itAgreesWithACountByHandOnAnySequence(
      @ForAll("traces") int[] hundredths,
      @ForAll @IntRange(min = 2, max = 30) int readings,
      @ForAll @IntRange(max = 40) int tolerance) {
    RestDetector detector = new ConsecutiveRule(readings, tolerance / 100.0).detector(59.16);
    for (int i = 0; i < hundredths.length; i++) {
      boolean expected = alike(hundredths, i, readings, tolerance);
      assertThat(detector.accept(i, hundredths[i] / 100.0)).as("reading %d", i).isEqualTo(expected);
    }
  }

  @Property
  void theMeanAndTheSpreadAreThoseOfTheLastReadings(
      @ForAll("traces") int[] hundredths, @ForAll @IntRange(min = 2, max = 30) int readings) {
    RestDetector detector = new ConsecutiveRule(readings, 1e6).detector(59.16);
    for (int i = 0; i < hundredths.length; i++) {
      if (detector.accept(i, hundredths[i] / 100.0)) {
        double sum = 0;
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (int j = i + 1 - readings; j <= i; j++) {
          sum += hundredths[j] / 100.0;
          lowest = Math.min(lowest, hundredths[j] / 100.0);
          highest = Math.max(highest, hundredths[j] / 100.0);
        }
        RestingPotential potential = detector.potential();
        // The rounding of up to thirty potentials of up to a few thousand mV.
        assertThat(Math.abs(potential.millivolts() - sum / readings)).isLessThan(1e-9);
        assertThat(potential.spreadMillivolts()).isEqualTo(highest - lowest);
      }
    }
  }
}
