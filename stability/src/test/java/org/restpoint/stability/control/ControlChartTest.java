package org.restpoint.stability.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.calibration.Reason;

/** Recoveries in percent are invented. */
class ControlChartTest {

  private static ControlChart begun(int values) {
    Random random = new Random(20);
    ControlChart chart = ControlChart.begin(Gathering.USUAL_BASE, RunRule.WESTERN_ELECTRIC);
    for (int i = 0; i < values; i++) {
      chart = chart.accept(100 + 2 * random.nextGaussian());
    }
    return chart;
  }

  @Test
  void beforeTheBaseIsCompleteThereIsNotEnoughHistory() {
    ControlChart chart = begun(19);
    assertThat(chart.limits()).isEmpty();
    assertThat(chart.signals()).isEmpty();
    assertThat(chart.withoutLimits())
        .contains(
            new Reason(
                "control-not-enough-history",
                "19 of 20 values are there that the limits are drawn from",
                "Go on checking while nothing is wrong; until then the fixed limits of the check"
                    + " itself hold."));
  }

  @Test
  void theLimitsStayFixedOnceTheBaseIsComplete() {
    ControlChart chart = begun(20);
    ControlLimits limits = chart.limits().orElseThrow();
    assertThat(chart.withoutLimits()).isEmpty();
    assertThat(chart.accept(500).accept(2).limits()).contains(limits);
  }

  @Test
  void aValueBeyondTheLimitsIsNamedWithItsFigures() {
    ControlChart chart =
        new Watching(
            new ControlLimits(20, 100, 2.256),
            RunRule.WESTERN_ELECTRIC,
            List.of(),
            List.of(),
            List.of());
    assertThat(chart.accept(107).signals())
        .containsExactly(
            new Signal(
                RunRule.BEYOND_THREE_SIGMA,
                List.of(107.0),
                "the value lies more than 3σ from the mean: 107.0 (mean 100.0, σ 2.00)"));
    assertThat(chart.accept(105).accept(99).accept(104.5).signals().get(0).text())
        .isEqualTo(
            "two of the last three values lie more than 2σ from the mean, on the same side: 105.0,"
                + " 99.00, 104.5 (mean 100.0, σ 2.00)");
  }

  @Test
  void aBaseThatDoesNotSpreadGoesOnGatheringOverTheNewestValues() {
    ControlChart chart = ControlChart.begin(8, RunRule.NELSON);
    for (int i = 0; i < 12; i++) {
      chart = chart.accept(100);
    }
    assertThat(chart.withoutLimits().orElseThrow().code()).isEqualTo("control-no-spread");
    assertThat(chart.withoutLimits().orElseThrow().text())
        .isEqualTo("the last 8 values are all 100.000, so no limits can be drawn");
    assertThat(chart.accept(101).limits()).isPresent();
  }

  @Test
  void aDoubtfulValueOfTheBaseIsNamedNotDropped() {
    ControlChart chart = ControlChart.begin(20, RunRule.WESTERN_ELECTRIC);
    for (int i = 0; i < 20; i++) {
      chart = chart.accept(i == 9 ? 115 : 100 + i % 2);
    }
    assertThat(chart).isInstanceOf(Watching.class);
    assertThat(((Watching) chart).doubtfulBase()).containsExactly(115.0);
    assertThat(chart.limits().orElseThrow().points()).isEqualTo(20);
  }

  @Test
  void aRunBegunInTheBaseIsCompletedAfterIt() {
    ControlChart chart = ControlChart.begin(8, RunRule.WESTERN_ELECTRIC);
    for (double value : new double[] {90, 110, 92, 108, 101, 104, 105, 104}) {
      chart = chart.accept(value);
    }
    for (double value : new double[] {103, 104, 103, 104}) {
      chart = chart.accept(value);
      assertThat(chart.signals()).isEmpty();
    }
    assertThat(chart.accept(103).signals())
        .extracting(Signal::rule)
        .containsExactly(RunRule.EIGHT_ON_ONE_SIDE);
  }

  @Test
  void aChartWrittenOutAndTakenUpAgainGoesOnAsItWas() {
    Random random = new Random(7);
    for (int written : new int[] {5, 20, 40}) {
      ControlChart chart = begun(written);
      ControlChart again =
          chart instanceof Watching w
              ? new Watching(
                  new ControlLimits(
                      w.fixed().points(), w.fixed().mean(), w.fixed().meanMovingRange()),
                  Set.copyOf(w.rules()),
                  w.doubtfulBase(),
                  new ArrayList<>(w.recent()),
                  w.signals())
              : new Gathering(20, RunRule.WESTERN_ELECTRIC, ((Gathering) chart).base());
      for (int i = 0; i < 40; i++) {
        double value = 100 + 4 * random.nextGaussian();
        chart = chart.accept(value);
        again = again.accept(value);
        assertThat(again).isEqualTo(chart);
      }
      assertThat(((Watching) chart).recent()).hasSize(Watching.WINDOW);
    }
  }

  @Test
  void whatIsNoChartIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ControlChart.begin(7, RunRule.NELSON))
        .withMessage("a base has 8 to 200 values, not 7");
    assertThatIllegalArgumentException().isThrownBy(() -> begun(3).accept(Double.NaN));
    assertThatIllegalArgumentException().isThrownBy(() -> begun(30).accept(Double.NaN));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                new Watching(
                    new ControlLimits(8, 1, 0), RunRule.NELSON, List.of(), List.of(), List.of()));
  }
}
