package org.restpoint.stability.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class CovarianceTest {

  @Test
  void parametersThatFollowFromReadingsTakeOverTheirVariances() {
    // a = y1 + y2, b = y1 − y2, with variances 4 and 1.
    Covariance covariance =
        Covariance.of(List.of(List.of(1.0, 1.0), List.of(1.0, -1.0)), new double[] {4, 1});

    assertThat(covariance).isEqualTo(new Covariance(2, List.of(5.0, 3.0, 3.0, 5.0)));
    assertThat(covariance.standardUncertainty(0)).isCloseTo(Math.sqrt(5), within(1e-12));
  }

  @Test
  void independentErrorsAddTheirVariances() {
    Covariance one = new Covariance(2, List.of(1.0, 0.5, 0.5, 1.0));

    assertThat(one.plus(one.times(2))).isEqualTo(one.times(3));
  }

  @Test
  void aVarianceBelowZeroOrWithoutAValueIsRefused() {
    for (List<Double> entries :
        List.of(
            List.of(-1.0, 0.0, 0.0, 1.0),
            List.of(1.0, 0.0, 0.0, Double.NaN),
            List.of(1.0, Double.POSITIVE_INFINITY, 0.0, 1.0))) {
      assertThatThrownBy(() -> new Covariance(2, entries))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("a variance is a finite number, 0 or above");
    }
  }
}
