package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ConsecutiveRuleTest {

  private static final long SECOND = 1_000_000_000L;

  /** Gives a detector readings a second apart; whether the last of them is at rest. */
  private static boolean feed(RestDetector detector, double... millivolts) {
    boolean rest = false;
    for (int i = 0; i < millivolts.length; i++) {
      rest = detector.accept(i * SECOND, millivolts[i]);
    }
    return rest;
  }

  @Test
  void tenReadingsAlikeAreAtRestAndNineAreNot() {
    RestDetector detector = new ConsecutiveRule(10, 0).detector(59.16);
    for (int i = 0; i < 9; i++) {
      assertThat(detector.accept(i * SECOND, 101.3)).isFalse();
    }
    assertThat(detector.accept(9 * SECOND, 101.3)).isTrue();
  }

  @Test
  void decimalsApartByExactlyTheToleranceAreWithinIt() {
    // 1.1 − 1.0 is a little over 0.1 in binary, 0.3 − 0.2 a little under it.
    assertThat(feed(new ConsecutiveRule(3, 0.1).detector(59.16), 1.0, 1.05, 1.1)).isTrue();
    assertThat(feed(new ConsecutiveRule(3, 0.1).detector(59.16), 0.2, 0.25, 0.3)).isTrue();
    assertThat(feed(new ConsecutiveRule(2, 0.1).detector(59.16), -999.9, -1000.0)).isTrue();
    assertThat(feed(new ConsecutiveRule(3, 0.1).detector(59.16), 1.0, 1.05, 1.101)).isFalse();
  }

  @Test
  void aSpikeKeepsItAwakeUntilItHasLeftTheWindow() {
    RestDetector detector = new ConsecutiveRule(4, 0.1).detector(59.16);
    assertThat(feed(detector, 5, 5, 5, 9)).isFalse();
    for (int i = 0; i < 3; i++) {
      assertThat(detector.accept((4 + i) * SECOND, 5)).isFalse();
    }
    assertThat(detector.accept(7 * SECOND, 5)).isTrue();
  }

  @Test
  void aLongCreepInsideTheToleranceIsAtRestByThisRuleAndItsDriftSaysSo() {
    // 0.01 mV each second is 0.6 mV/min; ten readings of it span 0.09 mV.
    RestDetector detector = new ConsecutiveRule(10, 0.1).detector(59.16);
    boolean rest = false;
    for (int i = 0; i < 1000; i++) {
      rest = detector.accept(i * SECOND, -20 - 0.01 * i);
    }
    assertThat(rest).isTrue();
    RestProgress progress = detector.progress();
    // The rounding of ten differences of 0.01 mV between potentials of 30 mV.
    assertThat(progress.driftMillivoltsPerMinute().orElseThrow()).isCloseTo(-0.6, within(1e-9));
    assertThat(progress.spreadMillivolts()).isCloseTo(0.09, within(1e-9));
  }

  @Test
  void driftIsTheSlopeOverTheWindowAloneAndOfUnevenTimesToo() {
    RestDetector detector = new ConsecutiveRule(4, 0.1).detector(59.16);
    long[] seconds = {0, 100, 103, 104, 109, 121};
    for (long second : seconds) {
      double millivolts = second < 100 ? 400 : 7 + 0.05 * second;
      detector.accept(second * SECOND, millivolts);
    }
    assertThat(detector.progress().driftMillivoltsPerMinute().orElseThrow())
        .isCloseTo(3, within(1e-9));
  }

  @Test
  void driftNeedsTwoInstants() {
    RestDetector detector = new ConsecutiveRule(3, 0.1).detector(59.16);
    detector.accept(SECOND, 1);
    assertThat(detector.progress().driftMillivoltsPerMinute()).isEmpty();
    detector.accept(SECOND, 2);
    assertThat(detector.progress().driftMillivoltsPerMinute()).isEmpty();
    detector.accept(2 * SECOND, 2);
    assertThat(detector.progress().driftMillivoltsPerMinute()).isPresent();
  }

  @Test
  void noiseAboveTheToleranceNeverSettles() {
    // The range of ten readings of 0.5 mV noise is below 0.1 mV once in more than 10⁹.
    RestDetector detector = new ConsecutiveRule(10, 0.1).detector(59.16);
    Random random = new Random(7);
    for (int i = 0; i < 100_000; i++) {
      assertThat(detector.accept(i * SECOND, 0.5 * random.nextGaussian())).isFalse();
    }
  }

  @Test
  void theRestingPotentialIsTheMeanAndItsUncertaintyKnowsTheTolerance() {
    RestDetector detector = new ConsecutiveRule(4, 0.3).detector(59.16);
    assertThat(feed(detector, 50, 7.0, 7.1, 7.2, 7.1)).isTrue();
    RestingPotential potential = detector.potential();
    assertThat(potential.millivolts()).isCloseTo(7.1, within(1e-12));
    assertThat(potential.spreadMillivolts()).isCloseTo(0.2, within(1e-12));
    assertThat(potential.forecast()).isFalse();
    // s² = 0.02/3, u² = s²/4 + 0.3²/3 (JCGM 100:2008, 4.2.3 and 4.3.7).
    assertThat(potential.standardUncertaintyMillivolts())
        .isCloseTo(Math.sqrt(0.02 / 12 + 0.03), within(1e-12));
  }

  @Test
  void thereIsNoPotentialBeforeRest() {
    RestDetector detector = new ConsecutiveRule(2, 0.1).detector(59.16);
    assertThatThrownBy(detector::potential).isInstanceOf(IllegalStateException.class);
    feed(detector, 1, 2);
    assertThatThrownBy(detector::potential)
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("not at rest");
  }

  @Test
  void thereIsNoProgressBeforeTheFirstReading() {
    assertThatThrownBy(() -> new ConsecutiveRule(2, 0.1).detector(59.16).progress())
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("no reading yet");
  }

  @Test
  void progressSaysWhatWasSeenSoFar() {
    RestDetector detector = new ConsecutiveRule(3, 0.1).detector(59.16);
    feed(detector, 4, 6);
    assertThat(detector.progress().readings()).isEqualTo(2);
    assertThat(detector.progress().latestMillivolts()).isEqualTo(6);
    assertThat(detector.progress().spreadMillivolts()).isEqualTo(2);
    feed(detector, 6, 6, 5);
    assertThat(detector.progress().readings()).isEqualTo(5);
    assertThat(detector.progress().latestMillivolts()).isEqualTo(5);
    assertThat(detector.progress().spreadMillivolts()).isEqualTo(1);
  }

  @Test
  void aRuleThatCannotBeIsRefused() {
    for (int readings : new int[] {-1, 0, 1, 100_001}) {
      assertThatThrownBy(() -> new ConsecutiveRule(readings, 0.1))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("the rule needs 2 to 100000 readings, not " + readings);
    }
    for (double within : new double[] {-0.1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> new ConsecutiveRule(10, within))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("a tolerance is 0 mV or above, not " + within);
    }
    assertThat(new ConsecutiveRule(100_000, 0).readings()).isEqualTo(100_000);
  }

  @Test
  void itIsDescribedAlikeInEveryLanguage() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertThat(new ConsecutiveRule(10, 0.1).describe()).isEqualTo("consecutive 10 within 0.1 mV");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void anElectrodeHasLeftItsRestBeyondThreeTolerances() {
    assertThat(new ConsecutiveRule(10, 0.1).restBandMillivolts(59.16))
        .isCloseTo(0.3, within(1e-12));
  }
}
