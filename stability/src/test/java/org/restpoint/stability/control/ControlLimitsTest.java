package org.restpoint.stability.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class ControlLimitsTest {

  private static final List<Double> FLOW_RATE =
      Arrays.stream(Published.table("flow-rate").numbers("flowRate")).boxed().toList();

  @Test
  void theFlowRateOfTheHandbookGivesItsLimits() {
    ControlLimits limits = ControlLimits.of(FLOW_RATE);
    assertThat(limits.mean()).isCloseTo(50.81, within(0.005));
    assertThat(limits.meanMovingRange()).isCloseTo(1.8778, within(0.00005));
    assertThat(limits.upper()).isCloseTo(55.8041, within(0.0001));
    assertThat(limits.lower()).isCloseTo(45.8159, within(0.0001));
    assertThat(FLOW_RATE).allMatch(x -> x < limits.upper() && x > limits.lower());
  }

  @Test
  void theLimitsAreTheMeanMoreOrLessTwoPointSixSixMeanRanges() {
    ControlLimits limits = new ControlLimits(20, 10, 1);
    assertThat(limits.upper()).isCloseTo(12.66, within(0.0005));
    assertThat(limits.lower()).isCloseTo(7.34, within(0.0005));
    assertThat(limits.upperRange()).isEqualTo(3.267);
  }

  @Test
  void theConstantsAreThoseOfTheNormalDistribution() {
    // d2 = 2/√π; d3 = √(2 − 4/π) for the range of two; the tables print three decimals.
    double d2 = 2 / Math.sqrt(Math.PI);
    assertThat(ControlLimits.D2).isCloseTo(d2, within(0.0005));
    assertThat(ControlLimits.D4).isCloseTo(1 + 3 * Math.sqrt(2 - 4 / Math.PI) / d2, within(0.0005));
  }

  /** 40 000 bases: the draw itself is good to 0.4 %, and d2 is rounded by 0.03 %. */
  @Test
  void theStatedErrorOfSigmaIsTheScatterOfSimulatedBases() {
    Random random = new Random(3);
    double[] sigmas = new double[40_000];
    for (int i = 0; i < sigmas.length; i++) {
      List<Double> base = new ArrayList<>();
      for (int j = 0; j < 20; j++) {
        base.add(100 + 2 * random.nextGaussian());
      }
      sigmas[i] = ControlLimits.of(base).sigma() / 2;
    }
    double stated = new ControlLimits(20, 0, 1).relativeStandardErrorOfSigma();
    assertThat(stated).isCloseTo(0.21, within(0.005));
    assertThat(Arrays.stream(sigmas).average().orElseThrow()).isCloseTo(1, within(0.004));
    assertThat(new StandardDeviation().evaluate(sigmas) / stated).isCloseTo(1, within(0.015));
  }

  @Test
  void aBaseThatDoesNotSpreadIsNoChart() {
    ControlLimits limits = ControlLimits.of(List.of(7.0, 7.0, 7.0));
    assertThat(limits.spreads()).isFalse();
    assertThat(limits.upper()).isEqualTo(7);
  }

  @Test
  void fewerThanTwoValuesAreRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> ControlLimits.of(List.of()));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ControlLimits.of(List.of(1.0)))
        .withMessage("limits need two values or more, not 1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ControlLimits.of(List.of(1.0, Double.NaN)));
  }
}
