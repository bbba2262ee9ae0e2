package org.restpoint.stability.health;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.hipparchus.stat.correlation.KendallsCorrelation;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;
import org.restpoint.stability.fit.StudentT;

class MannKendallTest {

  private static double[] index(int n) {
    return IntStream.range(0, n).asDoubleStream().toArray();
  }

  @Test
  void theTrendCountedByHandIsCountedTheSame() {
    double[] values = Published.table("trend-by-hand").numbers("value");
    MannKendall test = MannKendall.of(index(values.length), values);
    assertThat(test.s()).isEqualTo(54);
    assertThat(test.variance()).isCloseTo(14 * 13 * 33 / 18.0 - 1, within(1e-9));
    assertThat(test.z()).isCloseTo(2.9058, within(0.00005));
    assertThat(test.chance() / 2).isCloseTo(0.0018, within(0.00005));
  }

  @Test
  void thePrintedTestsHaveTheirNormalValuesAndChances() {
    Published table = Published.table("trend-tests");
    for (int i = 0; i < table.texts("series").size(); i++) {
      int n = (int) table.numbers("n")[i];
      long s = (long) table.numbers("s")[i];
      MannKendall test = MannKendall.untied(n, s);
      assertThat(s / (n * (n - 1) / 2.0)).isCloseTo(table.numbers("tau")[i], within(0.0005));
      boolean corrected = table.texts("corrected").get(i).equals("yes");
      double z = corrected ? test.z() : s / Math.sqrt(test.variance());
      assertThat(z).isCloseTo(table.numbers("z")[i], within(0.0005));
      double chance = corrected ? test.chance() : 2 * StudentT.normal().upperTail(Math.abs(z));
      assertThat(chance).isCloseTo(table.numbers("p")[i], within(0.00005));
    }
  }

  @Test
  void theChancesOfFewPointsAreThoseOfTheTable() {
    Published table = Published.table("kendall-tail");
    for (int i = 0; i < table.texts("n").size(); i++) {
      double chance = table.numbers("chance")[i];
      MannKendall test =
          MannKendall.untied((int) table.numbers("n")[i], (long) table.numbers("s")[i]);
      // Printed with three decimals, with two digits below 0.01.
      assertThat(test.chance() / 2)
          .as("n %s", table.texts("n").get(i))
          .isCloseTo(chance, within(chance < 0.01 ? 0.00005 : 0.0005));
    }
  }

  @Test
  void theChancesOfFivePointsAreThoseOfAllTheirOrders() {
    int[] counts = new int[21];
    count(new double[5], 0, counts);
    assertThat(Arrays.stream(counts).sum()).isEqualTo(120);
    for (int s = 0; s <= 10; s += 2) {
      double beyond = 0;
      for (int other = -10; other <= 10; other++) {
        beyond += Math.abs(other) >= s ? counts[other + 10] : 0;
      }
      assertThat(MannKendall.untied(5, s).chance()).isCloseTo(beyond / 120, within(1e-12));
      assertThat(MannKendall.untied(5, -s).chance()).isCloseTo(beyond / 120, within(1e-12));
    }
  }

  private static void count(double[] order, int placed, int[] counts) {
    if (placed == order.length) {
      counts[(int) MannKendall.of(index(placed), order).s() + 10]++;
      return;
    }
    for (int value = 1; value <= order.length; value++) {
      double candidate = value;
      if (Arrays.stream(order, 0, placed).noneMatch(v -> v == candidate)) {
        order[placed] = value;
        count(order, placed + 1, counts);
      }
    }
  }

  @Test
  void whereCountingEndsTheNormalValueIsAsGood() {
    int n = MannKendall.EXACT_UP_TO;
    for (long s = 2; s < 400; s += 2) {
      MannKendall counted = MannKendall.untied(n, s);
      assertThat(2 * StudentT.normal().upperTail(Math.abs(counted.z())))
          .isCloseTo(counted.chance(), within(2.5e-3));
    }
  }

  @Test
  void aSteadyClimbOfManyPointsIsAllButImpossibleByChance() {
    assertThat(MannKendall.of(index(40), index(40)).chance()).isPositive().isLessThan(1e-45);
    assertThat(MannKendall.of(index(200), index(200)).s()).isEqualTo(19_900);
  }

  @Property
  void theScoreIsThatOfKendallsTauWithTies(
      @ForAll @Size(min = 3, max = 30) List<@IntRange(max = 6) Integer> values) {
    double[] y = values.stream().mapToDouble(Integer::doubleValue).toArray();
    double[] x = new double[y.length];
    for (int i = 0; i < x.length; i++) {
      x[i] = Math.floor(i / 2.0);
    }
    MannKendall test = MannKendall.of(x, y);
    double pairs = x.length * (x.length - 1) / 2.0;
    double ofX = pairs - alike(x);
    double ofY = pairs - alike(y);
    if (ofY == 0) {
      assertThat(test.chance()).isEqualTo(1);
    } else {
      double tau = new KendallsCorrelation().correlation(x, y);
      assertThat((double) test.s()).isCloseTo(tau * Math.sqrt(ofX * ofY), within(1e-6));
    }
    assertThat(test.chance()).isBetween(0.0, 1.0);
    assertThat(test.variance()).isGreaterThanOrEqualTo(0);
  }

  private static double alike(double[] values) {
    double pairs = 0;
    for (int i = 0; i < values.length; i++) {
      for (int j = i + 1; j < values.length; j++) {
        pairs += values[i] == values[j] ? 1 : 0;
      }
    }
    return pairs;
  }

  /** Exact for a few points: var S over all orders of y, with ties in both. */
  @Test
  void theVarianceWithTiesIsThatOverAllOrders() {
    double[] x = {0, 0, 1, 2, 2};
    double[] y = {1, 1, 1, 2, 3};
    double[] squares = new double[2];
    permute(x, y, 0, squares);
    assertThat(squares[0]).isEqualTo(120);
    assertThat(MannKendall.of(x, y).variance()).isCloseTo(squares[1] / 120, within(1e-9));
  }

  private static void permute(double[] x, double[] y, int from, double[] squares) {
    if (from == y.length) {
      double s = MannKendall.of(x, y).s();
      squares[0]++;
      squares[1] += s * s;
      return;
    }
    for (int i = from; i < y.length; i++) {
      double[] next = y.clone();
      next[from] = y[i];
      next[i] = y[from];
      permute(x, next, from + 1, squares);
    }
  }

  @Test
  void fewerThanTwoPointsAreRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> MannKendall.of(new double[1], new double[1]));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> MannKendall.of(new double[2], new double[3]));
  }
}
