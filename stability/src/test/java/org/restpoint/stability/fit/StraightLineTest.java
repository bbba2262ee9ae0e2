package org.restpoint.stability.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class StraightLineTest {

  /**
   * Twelve digits: of the fifteen certified, double arithmetic on these data loses two or three.
   */
  private static final double TWELVE_DIGITS_PERCENT = 1e-10;

  @Test
  void theNorrisDataGiveNistsCertifiedValues() {
    Published norris = Published.table("norris");
    StraightLine line = StraightLine.through(norris.numbers("x"), norris.numbers("y"));
    double s = line.residualDeviation().orElseThrow();
    assertThat(line.points()).isEqualTo(36);
    assertThat(line.intercept())
        .isCloseTo(-0.262323073774029, withinPercentage(TWELVE_DIGITS_PERCENT));
    assertThat(line.slope()).isCloseTo(1.00211681802045, withinPercentage(TWELVE_DIGITS_PERCENT));
    assertThat(Math.sqrt(line.interceptVariance(s)))
        .isCloseTo(0.232818234301152, withinPercentage(TWELVE_DIGITS_PERCENT));
    assertThat(Math.sqrt(line.slopeVariance(s)))
        .isCloseTo(0.429796848199937e-3, withinPercentage(TWELVE_DIGITS_PERCENT));
    assertThat(s).isCloseTo(0.884796396144373, withinPercentage(TWELVE_DIGITS_PERCENT));
    assertThat(line.determination())
        .isCloseTo(0.999993745883712, withinPercentage(TWELVE_DIGITS_PERCENT));
  }

  @Test
  void theGuidesThermometerGivesItsCorrelationAndItsPredictedCorrection() {
    Published thermometer = Published.table("thermometer");
    double[] above20 =
        Arrays.stream(thermometer.numbers("celsius")).map(celsius -> celsius - 20).toArray();
    StraightLine line = StraightLine.through(above20, thermometer.numbers("correction"));
    double s = line.residualDeviation().orElseThrow();
    double intercept = Math.sqrt(line.interceptVariance(s));
    double slope = Math.sqrt(line.slopeVariance(s));
    // Each within half of the last digit the Guide prints.
    assertThat(line.intercept()).isCloseTo(-0.1712, within(0.00005));
    assertThat(intercept).isCloseTo(0.0029, within(0.00005));
    assertThat(line.slope()).isCloseTo(0.00218, within(0.000005));
    assertThat(slope).isCloseTo(0.00067, within(0.000005));
    assertThat(s).isCloseTo(0.0035, within(0.00005));
    assertThat(line.covariance(s) / (intercept * slope)).isCloseTo(-0.930, within(0.0005));
    double variance =
        line.interceptVariance(s) + 100 * line.slopeVariance(s) + 20 * line.covariance(s);
    assertThat(line.intercept() + 10 * line.slope()).isCloseTo(-0.1494, within(0.00005));
    assertThat(Math.sqrt(variance)).isCloseTo(0.0041, within(0.00005));
  }

  @Test
  void twoPointsAreJoinedWithoutAResidual() {
    StraightLine line = StraightLine.through(new double[] {1, 3}, new double[] {10, 4});
    assertThat(line.slope()).isEqualTo(-3);
    assertThat(line.intercept()).isEqualTo(13);
    assertThat(line.residualDeviation()).isEmpty();
    assertThat(line.determination()).isEqualTo(1);
  }

  @Test
  void aLevelLineExplainsAllThereIs() {
    StraightLine line = StraightLine.through(new double[] {1, 2, 3}, new double[] {5, 5, 5});
    assertThat(line.slope()).isZero();
    assertThat(line.determination()).isEqualTo(1);
    assertThat(line.residualDeviation()).hasValue(0);
  }

  @Test
  void aSlopeOfNothingExplainsNothing() {
    StraightLine line = StraightLine.through(new double[] {-1, 0, 1}, new double[] {1, 0, 1});
    assertThat(line.slope()).isZero();
    assertThat(line.determination()).isZero();
  }

  @Test
  void pointsAboveOneXHaveNoLine() {
    double[] x = {0.1, 0.1, 0.1};
    assertThatThrownBy(() -> StraightLine.through(x, new double[] {1, 2, 3}))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("all points have the same x: no line goes through them");
  }

  @Test
  void onePointOrUnequalCountsHaveNoLine() {
    String message = "a line needs two points or more, each with x and y";
    assertThatThrownBy(() -> StraightLine.through(new double[] {1}, new double[] {1}))
        .hasMessage(message);
    assertThatThrownBy(() -> StraightLine.through(new double[] {1, 2}, new double[] {1}))
        .hasMessage(message);
  }

  @Test
  void aPointThatIsNoNumberHasNoLine() {
    assertThatThrownBy(
            () -> StraightLine.through(new double[] {1, 2}, new double[] {1, Double.NaN}))
        .hasMessage("no line goes through a point at NaN");
    assertThatThrownBy(
            () ->
                StraightLine.through(
                    new double[] {1, Double.NEGATIVE_INFINITY}, new double[] {1, 2}))
        .hasMessage("no line goes through a point at -Infinity");
  }
}
