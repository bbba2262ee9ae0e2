package org.restpoint.stability.interference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.interference.FixedInterference.Held;
import org.restpoint.stability.interference.SeparateSolution.Solution;

class SelectivityTest {

  private static final double SLOPE = Nernst.idealSlopeMillivoltsPerDecade(1, 25);

  private static Solution solution(int charge, double activity, double millivolts) {
    return new Solution(charge, activity, 0, millivolts, 0);
  }

  /** 142.00 mV apart at 25 °C, worked out independently of the code. */
  @Test
  void twoSolutionsOfOneActivityGiveTheCoefficientByTheirPotentials() {
    Selectivity ofCation =
        new SeparateSolution(solution(1, 0.01, 200), solution(1, 0.01, 58), SLOPE, 0).selectivity();
    Selectivity ofAnion =
        new SeparateSolution(solution(-1, 0.01, 200), solution(-1, 0.01, 342), -SLOPE, 0)
            .selectivity();
    // Half of the last digit worked out.
    assertThat(ofCation.value()).isCloseTo(3.978e-3, within(5e-7));
    assertThat(ofAnion.value()).isCloseTo(ofCation.value(), withinPercentage(1e-10));
    assertThat(ofCation.log10()).isCloseTo(-142 / SLOPE, within(1e-12));
    assertThat(ofCation.relativeStandardUncertainty()).isZero();
  }

  /** Y. Umezawa et al. 2000: log10 K = (E_j − E_i)/S + (1 − z_i/z_j)·log10 a. */
  @Test
  void theActivityCountsWhereTheChargesDiffer() {
    Selectivity calciumBySodium =
        new SeparateSolution(solution(2, 0.01, 100), solution(1, 0.01, 12.5), 29.5, 0)
            .selectivity();
    assertThat(calciumBySodium.log10()).isCloseTo(-87.5 / 29.5 + (1 - 2) * -2, within(1e-12));
    Selectivity sodiumByCalcium =
        new SeparateSolution(solution(1, 0.01, 100), solution(2, 0.01, -20), 59, 0).selectivity();
    assertThat(sodiumByCalcium.log10()).isCloseTo(-120.0 / 59 + (1 - 0.5) * -2, within(1e-12));
  }

  @Test
  void doubtOfPotentialsSlopeAndActivitiesAddsUp() {
    Selectivity selectivity =
        new SeparateSolution(
                new Solution(1, 0.01, 0.01, 200, 0.3), new Solution(1, 0.01, 0.02, 58, 0.4), 59, 1)
            .selectivity();
    double ofPotentials = Math.log(10) * 0.5 / 59;
    double ofSlope = Math.log(10) * 142.0 / 59 / 59;
    assertThat(selectivity.relativeStandardUncertainty())
        .isCloseTo(
            Math.sqrt(ofPotentials * ofPotentials + ofSlope * ofSlope + 0.01 * 0.01 + 0.02 * 0.02),
            within(1e-12));
  }

  @Test
  void theDoubtOfAnAnionsSlopeIsNotBelowZero() {
    Selectivity selectivity =
        new SeparateSolution(
                new Solution(-1, 0.01, 0, 200, 0.3), new Solution(-1, 0.01, 0, 342, 0.4), -59, 0)
            .selectivity();
    assertThat(selectivity.relativeStandardUncertainty())
        .isCloseTo(Math.log(10) * 0.5 / 59, within(1e-12));
  }

  /** Wang, Analytical Electrochemistry, 2nd edition, equation 5-8: a_min = K·a_j^(z_i/z_j). */
  @Test
  void theCrossingBesideAFixedIonGivesTheCoefficient() {
    Selectivity alike =
        new FixedInterference(new Held(-1, 5e-5, 0.1), new Held(-1, 1e-2, 0.02)).selectivity();
    assertThat(alike.value()).isCloseTo(5e-3, withinPercentage(1e-10));
    assertThat(alike.relativeStandardUncertainty()).isCloseTo(Math.hypot(0.1, 0.02), within(1e-12));
    Selectivity ofHalfTheCharge =
        new FixedInterference(new Held(2, 1e-4, 0.03), new Held(1, 0.1, 0.02)).selectivity();
    assertThat(ofHalfTheCharge.value()).isCloseTo(1e-2, withinPercentage(1e-10));
    assertThat(ofHalfTheCharge.relativeStandardUncertainty()).isCloseTo(0.05, within(1e-12));
  }

  @Test
  void ionsOfOppositeSignHaveNoCoefficient() {
    assertThatThrownBy(
            () -> new SeparateSolution(solution(1, 0.01, 0), solution(-1, 0.01, 0), SLOPE, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("the interfering ion of charge -1 cannot stand in for");
    assertThatThrownBy(() -> new FixedInterference(new Held(1, 0.01, 0), new Held(-1, 0.01, 0)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("the interfering ion of charge -1 cannot stand in for");
  }

  @Test
  void aSlopeAgainstTheChargeIsRefused() {
    for (double slope : new double[] {-59, 0, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(
              () -> new SeparateSolution(solution(1, 0.01, 0), solution(1, 0.01, 0), slope, 0))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage(
              "the slope of an ion of charge 1 has its sign, which "
                  + slope
                  + " mV/decade has not");
    }
  }

  @Test
  void whatIsNotASolutionIsRefused() {
    for (double activity : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> solution(1, activity, 0))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("the activity of a solution is above 0 mol/L, not " + activity);
      assertThatThrownBy(() -> new Held(1, activity, 0))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("the activity of an ion is above 0 mol/L, not " + activity);
    }
    assertThatThrownBy(() -> solution(1, 0.01, Double.NaN))
        .hasMessage("a potential is a finite number, not NaN");
    assertThatThrownBy(() -> new Solution(1, 0.01, -1, 0, 0))
        .hasMessage("an uncertainty is 0 or above, not -1.0");
    assertThatThrownBy(() -> new Held(1, 0.01, -1))
        .hasMessage("an uncertainty is 0 or above, not -1.0");
    assertThatThrownBy(() -> new Selectivity(0, 0))
        .hasMessage("a selectivity coefficient is above 0, not 0.0");
    assertThatThrownBy(() -> new Selectivity(1, -1))
        .hasMessage("a relative uncertainty is 0 or above, not -1.0");
  }
}
