package org.restpoint.stability.control;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** Values are in σ from the mean. */
class RunRuleTest {

  private static final ControlLimits UNIT = new ControlLimits(20, 0, ControlLimits.D2);
  private static final Set<RunRule> ALL = EnumSet.allOf(RunRule.class);

  private static Set<RunRule> seen(double... values) {
    Watching chart = new Watching(UNIT, ALL, List.of(), List.of(), List.of());
    for (double value : values) {
      chart = chart.accept(value);
    }
    EnumSet<RunRule> rules = EnumSet.noneOf(RunRule.class);
    chart.signals().forEach(signal -> rules.add(signal.rule()));
    return rules;
  }

  @Test
  void oneValueBeyondThreeSigma() {
    assertThat(seen(3.01)).containsExactly(RunRule.BEYOND_THREE_SIGMA);
    assertThat(seen(-3.01)).containsExactly(RunRule.BEYOND_THREE_SIGMA);
    assertThat(seen(2.99)).isEmpty();
    assertThat(seen(3.01, 0)).isEmpty();
  }

  @Test
  void twoOfThreeValuesBeyondTwoSigmaOnTheSameSide() {
    assertThat(seen(2.1, 2.2)).containsExactly(RunRule.TWO_OF_THREE_BEYOND_TWO_SIGMA);
    assertThat(seen(2.1, 0.5, 2.2)).containsExactly(RunRule.TWO_OF_THREE_BEYOND_TWO_SIGMA);
    assertThat(seen(-2.1, 0.5, -2.2)).containsExactly(RunRule.TWO_OF_THREE_BEYOND_TWO_SIGMA);
    assertThat(seen(2.1, 0.5, -2.2)).isEmpty();
    assertThat(seen(2.1, 0.5, 0.6, 2.2)).isEmpty();
    // The newest value is not a part of it.
    assertThat(seen(2.1, 2.2, 0.5)).isEmpty();
  }

  @Test
  void fourOfFiveValuesBeyondOneSigmaOnTheSameSide() {
    assertThat(seen(1.1, 1.2, 0.3, 1.3, 1.1))
        .containsExactly(RunRule.FOUR_OF_FIVE_BEYOND_ONE_SIGMA);
    assertThat(seen(1.1, 1.2, -0.3, 1.3, 1.1))
        .containsExactly(RunRule.FOUR_OF_FIVE_BEYOND_ONE_SIGMA);
    assertThat(seen(1.1, 1.2, 0.3, 0.3, 1.1)).isEmpty();
    assertThat(seen(1.1, 1.2, -1.3, 1.1)).isEmpty();
  }

  @Test
  void eightAndNineValuesOnOneSideOfTheMean() {
    double[] eight = {0.1, 0.3, 0.2, 0.4, 0.3, 0.1, 0.2, 0.1};
    assertThat(seen(eight)).containsExactly(RunRule.EIGHT_ON_ONE_SIDE);
    assertThat(seen(0.1, 0.3, 0.2, 0.4, 0.3, 0.1, 0.2, 0.1, 0.3))
        .containsExactly(RunRule.EIGHT_ON_ONE_SIDE, RunRule.NINE_ON_ONE_SIDE);
    // A value on the mean is on neither side.
    assertThat(seen(0.1, 0.3, 0.2, 0, 0.3, 0.1, 0.2, 0.1)).isEmpty();
  }

  @Test
  void sixValuesGoingSteadilyOneWay() {
    assertThat(seen(-0.3, -0.2, -0.1, 0.1, 0.2, 0.3))
        .containsExactly(RunRule.SIX_RISING_OR_FALLING);
    assertThat(seen(0.3, 0.2, 0.1, -0.1, -0.2, -0.3))
        .containsExactly(RunRule.SIX_RISING_OR_FALLING);
    assertThat(seen(-0.3, -0.2, -0.2, 0.1, 0.2, 0.3)).isEmpty();
    assertThat(seen(-0.2, -0.1, 0.1, 0.2, 0.3)).isEmpty();
  }

  @Test
  void fourteenValuesGoingUpAndDownByTurns() {
    double[] values = new double[14];
    for (int i = 0; i < values.length; i++) {
      values[i] = i % 2 == 0 ? 1.2 : -0.2;
    }
    assertThat(seen(values)).containsExactly(RunRule.FOURTEEN_ALTERNATING);
    values[7] = 1.2;
    assertThat(seen(values)).isEmpty();
  }

  @Test
  void fifteenValuesWithinOneSigma() {
    double[] values = {
      0.3, -0.4, -0.5, 0.6, 0.7, 0.2, -0.9, -0.1, 0.3, 0.4, -0.8, 0.1, 0.2, -0.4, 0.5
    };
    assertThat(seen(values)).containsExactly(RunRule.FIFTEEN_WITHIN_ONE_SIGMA);
    values[5] = 1.01;
    assertThat(seen(values)).isEmpty();
  }

  @Test
  void eightValuesBeyondOneSigmaOnEitherSide() {
    assertThat(seen(1.1, -1.2, -1.3, 1.4, 1.1, -1.2, -1.1, 1.1))
        .containsExactly(RunRule.EIGHT_BEYOND_ONE_SIGMA);
    assertThat(seen(1.1, -1.2, -1.3, 1.4, 0.9, -1.2, -1.1, 1.1)).isEmpty();
    assertThat(seen(1.1, 1.2, 1.3, 1.4, 1.1, 1.2, 1.1, 1.1))
        .doesNotContain(RunRule.EIGHT_BEYOND_ONE_SIGMA);
  }

  @Test
  void aStepLargerThanTheRangeChartAllows() {
    // 3.267 · 1.128 = 3.685 σ
    assertThat(seen(-1.8, 1.9)).containsExactly(RunRule.RANGE_BEYOND_LIMIT);
    assertThat(seen(-1.8, 1.8)).isEmpty();
  }

  @Test
  void theSetsAreThoseOfTheirAuthors() {
    assertThat(RunRule.WESTERN_ELECTRIC)
        .containsExactly(
            RunRule.BEYOND_THREE_SIGMA,
            RunRule.TWO_OF_THREE_BEYOND_TWO_SIGMA,
            RunRule.FOUR_OF_FIVE_BEYOND_ONE_SIGMA,
            RunRule.EIGHT_ON_ONE_SIDE);
    assertThat(RunRule.NELSON)
        .hasSize(8)
        .doesNotContain(RunRule.EIGHT_ON_ONE_SIDE, RunRule.RANGE_BEYOND_LIMIT);
  }

  @Property(tries = 200)
  void turnedUpsideDownTheSamePatternsAreSeen(
      @ForAll @Size(min = 1, max = 15) List<@DoubleRange(min = -4, max = 4) Double> values) {
    double[] drawn = values.stream().mapToDouble(Double::doubleValue).toArray();
    double[] turned = values.stream().mapToDouble(value -> -value).toArray();
    assertThat(seen(turned)).isEqualTo(seen(drawn));
  }
}
