package org.restpoint.stability.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.fit.Covariance;

class BracketTest {

  private static ResponseCurve curve(double offset, double ofOffset) {
    return new ResponseCurve(
        offset,
        -57,
        0,
        25,
        Compensation.ideal(),
        new Covariance(3, List.of(ofOffset * ofOffset, 0.1, 0.0, 0.1, 0.25, 0.0, 0.0, 0.0, 0.0)),
        ResponseCurve.NO_DOUBT);
  }

  /** Halfway between 20 and 26 mV: 23; a quarter of the way 21.5. */
  @Test
  void theOffsetLiesOnTheLineBetweenBoth() {
    assertThat(new Bracket(curve(20, 1), curve(26, 2), 0.5).curve().offsetMillivolts())
        .isEqualTo(23);
    assertThat(new Bracket(curve(20, 1), curve(26, 2), 0.25).curve().offsetMillivolts())
        .isEqualTo(21.5);
  }

  @Test
  void atEitherStandardItIsTheCurveItself() {
    assertThat(new Bracket(curve(20, 1), curve(26, 2), 0).curve()).isEqualTo(curve(20, 1));
    assertThat(new Bracket(curve(20, 1), curve(26, 2), 1).curve()).isEqualTo(curve(26, 2));
  }

  /** In the middle: (1 + 2)/2 = 1.5 mV and 6/√12 = 1.7321 mV, together √(2.25 + 3) = 2.2913 mV. */
  @Test
  void inTheMiddleTheWayCountsAsARectangleBetweenBoth() {
    Covariance line = new Bracket(curve(20, 1), curve(26, 2), 0.5).curve().fromLine();
    assertThat(line.standardUncertainty(0)).isCloseTo(2.2912878, within(1e-7));
    assertThat(line.of(0, 1)).isEqualTo(0.1);
    assertThat(line.standardUncertainty(1)).isEqualTo(0.5);
  }

  @Test
  void curvesOnAnotherSlopeOrTemperatureAreNoBracket() {
    ResponseCurve steeper = ResponseCurve.straight(20, -58, 25);
    ResponseCurve warmer = ResponseCurve.straight(20, -57, 26);
    ResponseCurve plain = ResponseCurve.straight(20, -57, 25);
    assertThat(Bracket.isPossible(plain, steeper)).isFalse();
    assertThat(Bracket.isPossible(plain, warmer)).isFalse();
    assertThatIllegalArgumentException().isThrownBy(() -> new Bracket(plain, steeper, 0.5));
    assertThatIllegalArgumentException().isThrownBy(() -> new Bracket(plain, plain, 1.1));
  }
}
