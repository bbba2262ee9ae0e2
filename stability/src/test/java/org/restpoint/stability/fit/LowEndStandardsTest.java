package org.restpoint.stability.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class LowEndStandardsTest {

  private static final double[] DECADES = {1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 1e-2};

  private static double[] all(double value, int n) {
    double[] values = new double[n];
    Arrays.fill(values, value);
    return values;
  }

  private static double[] curve(double[] c, double[] tau, double a, double s, double b) {
    double[] y = new double[c.length];
    for (int i = 0; i < c.length; i++) {
      y[i] = a + s * tau[i] * Math.log10(c[i] + b);
    }
    return y;
  }

  private static LowEndCurve curved(LowEndFit fit) {
    assertThat(fit).isInstanceOf(LowEndFit.Curved.class);
    return ((LowEndFit.Curved) fit).curve();
  }

  @Test
  void standardsOnACurveGiveItBackAtAnyTemperatures() {
    double[] tau = {1, 1.02, 0.98, 1, 1.01, 0.99};
    double[] y = curve(DECADES, tau, 80, -58, 3e-6);
    LowEndFit fit = LowEndStandards.of(DECADES, tau, y, all(0.1, 6)).fit(0.05);
    LowEndCurve curve = curved(fit);
    assertThat(curve.offset()).isCloseTo(80, within(1e-6));
    assertThat(curve.slope()).isCloseTo(-58, within(1e-6));
    assertThat(curve.background()).isCloseTo(3e-6, withinPercentage(1e-6));
    assertThat(curve.consistency().degreesOfFreedom()).isEqualTo(3);
    assertThat(((LowEndFit.Curved) fit).probability()).isLessThan(1e-10);
    for (int i = 0; i < 6; i++) {
      assertThat(curve.at(DECADES[i], tau[i])).isCloseTo(y[i], within(1e-6));
      assertThat(curve.concentrationAt(y[i], tau[i]))
          .isCloseTo(DECADES[i], within(1e-12 + 1e-6 * DECADES[i]));
    }
  }

  @Test
  void aStandardWithoutTheIonTakesPart() {
    double[] c = {0, 1e-5, 1e-4, 1e-3, 1e-2};
    double[] tau = all(1, 5);
    double[] y = curve(c, tau, 200, 59, 1e-10);
    LowEndStandards standards = LowEndStandards.of(c, tau, y, all(0.1, 5));
    assertThat(standards.atBackground(0)).isEmpty();
    LowEndFit fit = standards.fit(0.05);
    assertThat(curved(fit).background()).isCloseTo(1e-10, withinPercentage(1e-5));
    assertThat(((LowEndFit.Curved) fit).probability()).isZero();
  }

  @Test
  void anUnbentLineStaysALine() {
    double[] tau = all(1, 6);
    double[] y = curve(DECADES, tau, 80, -58, 0);
    for (int i = 0; i < 6; i++) {
      y[i] += i % 2 == 0 ? 0.2 : -0.2;
    }
    LowEndFit fit = LowEndStandards.of(DECADES, tau, y, all(0.3, 6)).fit(0.05);
    assertThat(fit).isInstanceOf(LowEndFit.Straight.class);
    assertThat(((LowEndFit.Straight) fit).line().estimate().slope()).isCloseTo(-58, within(0.2));
    assertThat(((LowEndFit.Straight) fit).probability()).isGreaterThan(0.05);
  }

  @Test
  void fluorideThatBendsTheOtherWayStaysALine() {
    Published table = Published.table("fluoride-standards");
    LowEndFit fit =
        LowEndStandards.of(
                table.numbers("milligramsPerLitre"),
                all(1, 6),
                table.numbers("millivolts"),
                all(1, 6))
            .fit(0.05);
    assertThat(fit).isInstanceOf(LowEndFit.Straight.class);
    LowEndFit.Straight straight = (LowEndFit.Straight) fit;
    assertThat(straight.line().estimate().slope()).isCloseTo(-76.19, within(0.005));
    assertThat(straight.line().determination()).isCloseTo(0.99253, within(0.000005));
    // With b at its bound the curve is the line but for a thousandth of the lowest standard.
    assertThat(straight.probability()).isCloseTo(0.5, within(0.001));
  }

  @Test
  void threeStandardsAreTooFewForThreeParametersAndATest() {
    double[] c = {1e-6, 1e-5, 1e-4};
    double[] tau = all(1, 3);
    LowEndStandards standards =
        LowEndStandards.of(c, tau, curve(c, tau, 80, -58, 1e-5), all(0.1, 3));
    assertThat(standards.fit(0.05)).isEqualTo(new LowEndFit.TooFewStandards(3, 4));
    // For a known b they are a line.
    LineEstimate line = standards.atBackground(1e-5).orElseThrow().estimate();
    assertThat(line.slope()).isCloseTo(-58, within(1e-9));
    assertThat(line.intercept()).isCloseTo(80, within(1e-9));
  }

  @Test
  void standardsThatDoNotDetermineACurveSaySo() {
    double[] alike = all(1e-3, 4);
    double[] ones = all(1, 4);
    assertThat(LowEndStandards.of(alike, ones, new double[] {1, 2, 3, 4}, ones).fit(0.05))
        .isEqualTo(new LowEndFit.Undetermined(LowEndFit.Reason.ALIKE));
    double[] c = {1e-6, 1e-5, 1e-4, 1e-3};
    double[] below = curve(c, ones, 80, -58, 1e-2);
    assertThat(LowEndStandards.of(c, ones, below, all(0.001, 4)).fit(0.05))
        .isEqualTo(new LowEndFit.Undetermined(LowEndFit.Reason.NO_LINEAR_PART));
  }

  @Test
  void theStatedUncertaintiesAreThoseOfManyCalibrations() {
    Random random = new Random(20240611);
    double[] tau = all(1, 6);
    double[] exact = curve(DECADES, tau, 80, -58, 3e-6);
    double u = 0.3;
    LowEndCurve first = curved(LowEndStandards.of(DECADES, tau, exact, all(u, 6)).fit(0.05));
    int runs = 2000;
    double[] sum = new double[2];
    double[] squares = new double[2];
    for (int run = 0; run < runs; run++) {
      double[] y = exact.clone();
      for (int i = 0; i < y.length; i++) {
        y[i] += u * random.nextGaussian();
      }
      LowEndCurve curve = curved(LowEndStandards.of(DECADES, tau, y, all(u, 6)).fit(0.05));
      // 385 mV is 2.5e-6 mol/L, below b.
      double[] seen = {curve.slope(), curve.concentrationAt(385, 1)};
      for (int k = 0; k < 2; k++) {
        sum[k] += seen[k];
        squares[k] += seen[k] * seen[k];
      }
    }
    // A standard deviation from 2000 runs is itself known to 1.6 %; three of those.
    for (int k = 0; k < 2; k++) {
      double mean = sum[k] / runs;
      double scatter = Math.sqrt(squares[k] / runs - mean * mean);
      double stated =
          k == 0
              ? first.covariance().standardUncertainty(1)
              : first.concentrationUncertainty(385, 0, 1);
      assertThat(scatter).isCloseTo(stated, withinPercentage(5));
    }
  }

  @Test
  void oneGoodLineInTwentyIsTakenForBent() {
    Random random = new Random(4);
    double[] tau = all(1, 6);
    int bent = 0;
    int runs = 2000;
    for (int run = 0; run < runs; run++) {
      double[] y = curve(DECADES, tau, 80, -58, 0);
      for (int i = 0; i < y.length; i++) {
        y[i] += 0.3 * random.nextGaussian();
      }
      bent +=
          LowEndStandards.of(DECADES, tau, y, all(0.3, 6)).fit(0.05) instanceof LowEndFit.Straight
              ? 0
              : 1;
    }
    // 5 % of 2000 ± three times √(2000·0.05·0.95) = 10.
    assertThat(bent).isBetween(70, 130);
  }

  @Test
  void whatIsNoStandardIsRefused() {
    double[] one = {1};
    assertThatThrownBy(() -> LowEndStandards.of(new double[] {-1}, one, one, one))
        .hasMessageContaining("standard 1 has a concentration of 0 or above");
    assertThatThrownBy(() -> LowEndStandards.of(one, new double[] {0}, one, one))
        .hasMessageContaining("temperature ratio above 0");
    assertThatThrownBy(() -> LowEndStandards.of(new double[] {0}, one, one, one))
        .hasMessageContaining("one standard at least");
    assertThatThrownBy(() -> LowEndStandards.of(one, one, one, one).fit(1))
        .hasMessageContaining("significance");
    assertThatThrownBy(() -> LowEndStandards.of(one, one, one, one).atBackground(-1))
        .hasMessageContaining("b is 0 or above");
  }
}
