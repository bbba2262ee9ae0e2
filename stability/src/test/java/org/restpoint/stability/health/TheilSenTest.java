package org.restpoint.stability.health;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.stat.descriptive.rank.Median;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class TheilSenTest {

  @Test
  void theExampleOfSenGivesItsSlopeAndInterval() {
    Published table = Published.table("theil-sen");
    TheilSen line = TheilSen.through(table.numbers("x"), table.numbers("y"), 0.93).orElseThrow();
    assertThat(line.slope()).isEqualTo(4);
    assertThat(line.intercept()).isEqualTo(6);
    assertThat(line.interval().orElseThrow().low()).isCloseTo(3.71, within(0.005));
    assertThat(line.interval().orElseThrow().high()).isCloseTo(4.38, within(0.0051));
  }

  @Test
  void aQuarterOfThePointsMayBeSpoiled() {
    double[] x = new double[20];
    double[] y = new double[20];
    for (int i = 0; i < x.length; i++) {
      x[i] = i;
      y[i] = i % 4 == 1 ? 1000 : 98 - 0.1 * i;
    }
    TheilSen line = TheilSen.through(x, y, 0.95).orElseThrow();
    assertThat(line.slope()).isCloseTo(-0.1, within(1e-9));
    assertThat(line.at(10)).isCloseTo(97, within(1e-9));
  }

  @Test
  void pointsAtOneTimeHaveNoLineAndThreeHaveNoInterval() {
    assertThat(TheilSen.through(new double[] {1, 1}, new double[] {1, 2}, 0.95)).isEmpty();
    TheilSen line =
        TheilSen.through(new double[] {0, 1, 2}, new double[] {0, 2, 4}, 0.95).orElseThrow();
    assertThat(line.slope()).isEqualTo(2);
    assertThat(line.interval()).isEmpty();
  }

  /** Sen's interval for 20 normal points: stated 95 %; ±1 % holds four errors of 4000 draws. */
  @Test
  void theIntervalHoldsTheSlopeAsOftenAsItSays() {
    Random random = new Random(1968);
    int held = 0;
    int draws = 4000;
    double[] x = new double[20];
    double[] y = new double[20];
    for (int draw = 0; draw < draws; draw++) {
      for (int i = 0; i < x.length; i++) {
        x[i] = i + random.nextDouble();
        y[i] = 3 - 0.5 * x[i] + random.nextGaussian();
      }
      TheilSen.Interval interval =
          TheilSen.through(x, y, 0.95).orElseThrow().interval().orElseThrow();
      held += interval.low() <= -0.5 && interval.high() >= -0.5 ? 1 : 0;
    }
    assertThat((double) held / draws).isBetween(0.94, 0.965);
  }

  @Property
  void aChangeOfUnitsChangesTheLineWithIt(
      @ForAll @Size(min = 4, max = 20) List<@DoubleRange(min = -100, max = 100) Double> drawn,
      @ForAll @DoubleRange(min = 0.1, max = 100) double unit,
      @ForAll @DoubleRange(min = -50, max = 50) double shift) {
    double[] values = drawn.stream().mapToDouble(Double::doubleValue).toArray();
    double[] x = new double[values.length];
    double[] changed = new double[values.length];
    for (int i = 0; i < x.length; i++) {
      x[i] = i * i;
      changed[i] = shift + unit * values[i];
    }
    TheilSen line = TheilSen.through(x, values, 0.9).orElseThrow();
    TheilSen other = TheilSen.through(x, changed, 0.9).orElseThrow();
    assertThat(other.slope()).isCloseTo(unit * line.slope(), within(1e-9));
    assertThat(other.intercept()).isCloseTo(shift + unit * line.intercept(), within(1e-8));
  }

  @Property
  void theMedianIsThatOfTheOracle(
      @ForAll @Size(min = 1, max = 20) List<@DoubleRange(min = -100, max = 100) Double> drawn) {
    double[] values = drawn.stream().mapToDouble(Double::doubleValue).toArray();
    assertThat(Baseline.median(values)).isCloseTo(new Median().evaluate(values), within(1e-12));
  }

  @Test
  void theMedianDistanceOfNormalValuesIsMadeTheirStandardDeviation() {
    double quartile = new NormalDistribution().inverseCumulativeProbability(0.75);
    assertThat(Baseline.NORMAL).isCloseTo(1 / quartile, within(0.00005));
    Baseline base = Baseline.of(new double[] {1, 2, 3, 4, 100});
    assertThat(base.median()).isEqualTo(3);
    assertThat(base.deviation()).isCloseTo(1.4826, within(1e-12));
    assertThatIllegalArgumentException().isThrownBy(() -> Baseline.of(new double[0]));
  }
}
