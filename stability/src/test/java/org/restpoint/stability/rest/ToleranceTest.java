package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.electrode.Nernst;

class ToleranceTest {

  @Test
  void fourPerCentAreAboutAMillivoltOfAMonovalentIonAndHalfOfADivalentOne() {
    // J. Wang, Analytical Electrochemistry, 2nd edition, Wiley-VCH 2000, p. 146: 1 mV is 4 % of a
    // monovalent ion and 8 % of a divalent one; both figures are rounded to a whole per cent.
    double monovalent = Nernst.idealSlopeMillivoltsPerDecade(1, 25);
    double divalent = Nernst.idealSlopeMillivoltsPerDecade(2, 25);
    assertThat(new Tolerance.ConcentrationPercent(4).onSlope(monovalent))
        .isCloseTo(1, within(0.13));
    assertThat(new Tolerance.ConcentrationPercent(8).onSlope(divalent)).isCloseTo(1, within(0.07));
  }

  @Test
  void aPercentageIsTheMillivoltsByWhichItMovesTheElectrode() {
    Tolerance two = new Tolerance.ConcentrationPercent(2);
    // 58 · log10(1.02) = 58 · 0.00860017176.
    assertThat(two.onSlope(58)).isCloseTo(0.498809962, within(1e-9));
    assertThat(two.onSlope(-58)).isEqualTo(two.onSlope(58));
    assertThat(new Tolerance.ConcentrationPercent(900).onSlope(-60)).isCloseTo(60, within(1e-12));
    assertThat(new Tolerance.ConcentrationPercent(0).onSlope(58)).isZero();
  }

  @Test
  void millivoltsAreTheSameOnEverySlope() {
    Tolerance tenth = new Tolerance.Millivolts(0.1);
    assertThat(tenth.onSlope(59)).isEqualTo(0.1);
    assertThat(tenth.onSlope(-28)).isEqualTo(0.1);
  }

  @Test
  void aPercentageDecidesWithTheSameReadingAsItsMillivolts() {
    double millivolts = 55 * Math.log10(1.02);
    for (Duration span : new Duration[] {Duration.ZERO, Duration.ofSeconds(12)}) {
      RestRule percent = new ConsecutiveRule(6, new Tolerance.ConcentrationPercent(2), span);
      RestRule same = new ConsecutiveRule(6, new Tolerance.Millivolts(millivolts), span);
      RestDetector one = percent.detector(-55);
      RestDetector other = same.detector(-55);
      int rests = 0;
      for (long at : Traces.every(500)) {
        boolean rest = one.accept(at, Traces.approach(at / 1e9));
        assertThat(other.accept(at, Traces.approach(at / 1e9))).isEqualTo(rest);
        rests += rest ? 1 : 0;
      }
      assertThat(rests).isBetween(1, 1200);
      assertThat(one.potential().standardUncertaintyMillivolts())
          .isCloseTo(other.potential().standardUncertaintyMillivolts(), within(1e-12));
      assertThat(percent.restBandMillivolts(-55)).isCloseTo(3 * millivolts, within(1e-12));
    }
  }

  @Test
  void whatCannotBeIsRefused() {
    for (double wrong : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> new Tolerance.ConcentrationPercent(wrong))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("a tolerance is 0 % or above, not " + wrong);
    }
    for (double wrong : new double[] {0, Double.NaN, Double.NEGATIVE_INFINITY}) {
      assertThatThrownBy(() -> new ConsecutiveRule(2, 0.1).detector(wrong))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("a slope is a finite number of mV/decade and not 0, not " + wrong);
    }
  }
}
