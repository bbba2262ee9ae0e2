package org.restpoint.stability.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.stability.Published;

class DistributionsTest {

  /** Half of the last digit printed. */
  private static final double THREE_DECIMALS = 0.0005 + 1e-9;

  @ParameterizedTest
  @ValueSource(strings = {"0.90", "0.95", "0.975", "0.99", "0.995", "0.999"})
  void studentsQuantilesAreThoseOfTheHandbook(String probability) {
    Published table = Published.table("student-t-table");
    double[] freedom = table.numbers("degreesOfFreedom");
    double[] critical = table.numbers(probability);
    for (int i = 0; i < freedom.length; i++) {
      StudentT t = new StudentT(freedom[i]);
      double share = Double.parseDouble(probability);
      assertThat(t.quantile(share)).isCloseTo(critical[i], within(THREE_DECIMALS));
      assertThat(t.coverageFactor(2 * share - 1)).isCloseTo(critical[i], within(THREE_DECIMALS));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"0.01", "0.05", "0.10", "0.90", "0.95", "0.975", "0.99", "0.999"})
  void chiSquareQuantilesAreThoseOfTheHandbook(String probability) {
    Published table = Published.table("chi-square-table");
    double[] freedom = table.numbers("degreesOfFreedom");
    double[] critical = table.numbers(probability);
    for (int i = 0; i < freedom.length; i++) {
      assertThat(new ChiSquare(freedom[i]).quantile(Double.parseDouble(probability)))
          .isCloseTo(critical[i], within(THREE_DECIMALS));
    }
  }

  @Property
  void studentsDistributionIsHipparchus(
      @ForAll @DoubleRange(min = 0.5, max = 2000) double freedom,
      @ForAll @DoubleRange(min = -40, max = 40) double t) {
    // Both work in doubles; the logarithm of Γ at 1000 keeps about twelve digits.
    assertThat(new StudentT(freedom).cumulative(t))
        .isCloseTo(new TDistribution(freedom).cumulativeProbability(t), within(1e-11));
  }

  @Property
  void chiSquareIsHipparchus(
      @ForAll @DoubleRange(min = 0.5, max = 500) double freedom,
      @ForAll @DoubleRange(min = 0, max = 3) double share) {
    double x = share * freedom;
    ChiSquare ours = new ChiSquare(freedom);
    double theirs = new ChiSquaredDistribution(freedom).cumulativeProbability(x);
    assertThat(ours.cumulative(x)).isCloseTo(theirs, within(1e-11));
    assertThat(ours.upperTail(x)).isCloseTo(1 - theirs, within(1e-11));
  }

  @Property
  void aQuantileLeadsBackToItsProbability(
      @ForAll @DoubleRange(min = 1, max = 300) double freedom,
      @ForAll @DoubleRange(min = 1e-6, max = 0.999999) @Scale(6) double probability) {
    StudentT t = new StudentT(freedom);
    ChiSquare chi = new ChiSquare(freedom);
    assertThat(t.cumulative(t.quantile(probability)))
        .isCloseTo(probability, withinPercentage(1e-9));
    assertThat(chi.cumulative(chi.quantile(probability)))
        .isCloseTo(probability, withinPercentage(1e-9));
  }

  @Test
  void oneDegreeOfFreedomIsCauchysAndTwoOfChiSquareIsTheExponential() {
    // Closed forms: 1/2 - atan(t)/π and exp(−x/2), far into the tail.
    assertThat(new StudentT(1).upperTail(1e8))
        .isCloseTo(1 / (Math.PI * 1e8), withinPercentage(1e-10));
    assertThat(new ChiSquare(2).upperTail(400)).isCloseTo(Math.exp(-200), withinPercentage(1e-9));
    assertThat(new ChiSquare(2).quantile(1e-9)).isCloseTo(2e-9, withinPercentage(1e-6));
    assertThat(new StudentT(1).quantile(1e-9))
        .isCloseTo(-1 / (Math.PI * 1e-9), withinPercentage(1e-6));
  }

  @Test
  void manyDegreesOfFreedomAreTheNormalDistribution() {
    // Abramowitz and Stegun, table 26.1: P(Z > 1.96) = 0.0249978951.
    assertThat(StudentT.normal().upperTail(1.96)).isCloseTo(0.0249978951, within(5e-11));
    assertThat(new StudentT(9e8).upperTail(1.96)).isCloseTo(0.0249978951, within(5e-9));
    assertThat(StudentT.normal().coverageFactor(0.95)).isCloseTo(1.959963985, within(5e-10));
    assertThat(StudentT.normal().quantile(0.5)).isZero();
    assertThat(StudentT.normal().cumulative(Double.POSITIVE_INFINITY)).isEqualTo(1);
    assertThat(new StudentT(3).upperTail(Double.POSITIVE_INFINITY)).isZero();
    assertThat(new StudentT(3).upperTail(0)).isEqualTo(0.5);
  }

  @Test
  void theEndsOfChiSquareAreExact() {
    ChiSquare chi = new ChiSquare(3);
    assertThat(chi.cumulative(0)).isZero();
    assertThat(chi.upperTail(0)).isEqualTo(1);
    assertThat(chi.cumulative(Double.POSITIVE_INFINITY)).isEqualTo(1);
    assertThat(chi.upperTail(Double.POSITIVE_INFINITY)).isZero();
  }

  @Test
  void whatHasNoQuantileIsRefused() {
    assertThatThrownBy(() -> new StudentT(0)).hasMessageContaining("degrees of freedom");
    assertThatThrownBy(() -> new ChiSquare(Double.POSITIVE_INFINITY))
        .hasMessageContaining("degrees of freedom");
    assertThatThrownBy(() -> new StudentT(3).quantile(1)).hasMessageContaining("below 1");
    assertThatThrownBy(() -> new StudentT(3).coverageFactor(0)).hasMessageContaining("above 0");
    assertThatThrownBy(() -> new StudentT(3).upperTail(Double.NaN)).hasMessageContaining("number");
    assertThatThrownBy(() -> new ChiSquare(3).quantile(0)).hasMessageContaining("above 0");
    assertThatThrownBy(() -> new ChiSquare(3).cumulative(-1)).hasMessageContaining("0 or above");
  }
}
