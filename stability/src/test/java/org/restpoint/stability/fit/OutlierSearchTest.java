package org.restpoint.stability.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class OutlierSearchTest {

  private static WeightedLine line(double[] x, double[] y, double uncertainty) {
    double[] u = new double[x.length];
    Arrays.fill(u, uncertainty);
    return WeightedLine.through(x, y, u);
  }

  @Test
  void forbessTwelfthCaseIsNamedWithThePublishedResidual() {
    Published table = Published.table("forbes");
    // As in the book's table 1.1, to two decimals.
    double[] y =
        Arrays.stream(table.numbers("inchesOfMercury"))
            .map(pressure -> Math.round(1e4 * Math.log10(pressure)) / 100.0)
            .toArray();
    WeightedLine line = line(table.numbers("fahrenheit"), y, 1);
    FittedPoint twelfth = line.points().get(11);
    double s = line.residualDeviation().orElseThrow();
    assertThat(twelfth.residual()).isCloseTo(1.36, within(0.005));
    assertThat(twelfth.leverage()).isCloseTo(0.0639, within(0.00005));
    assertThat(twelfth.standardized().orElseThrow() / s).isCloseTo(3.7078, within(0.0005));
    assertThat(OutlierSearch.USUAL.byScatter(line))
        .asInstanceOf(InstanceOfAssertFactories.type(OutlyingPoint.Named.class))
        .satisfies(
            named -> {
              assertThat(named.index()).isEqualTo(11);
              // The book rounds the standardized residual on the way: 0.0005 there is 0.01 here.
              assertThat(named.statistic()).isCloseTo(12.40, within(0.01));
              // 17 times the two tails of t(14) at 12.40.
              assertThat(named.probability()).isBetween(5e-8, 2e-7);
            });
  }

  @Test
  void aStandardFarOffIsNamedByItsKnownUncertaintyToo() {
    double[] x = {-5, -4, -3, -2};
    double[] y = {0, 59, 128, 177};
    assertThat(OutlierSearch.USUAL.byUncertainty(line(x, y, 1)))
        .asInstanceOf(InstanceOfAssertFactories.type(OutlyingPoint.Named.class))
        .satisfies(
            named -> {
              assertThat(named.index()).isEqualTo(2);
              assertThat(named.statistic()).isPositive();
            });
    assertThat(OutlierSearch.USUAL.byUncertainty(line(x, y, 10)))
        .isInstanceOf(OutlyingPoint.NoneFound.class);
  }

  @Test
  void ofThreePointsNoSingleOneCanBeNamed() {
    double[] x = {-5, -4, -2};
    double[] y = {0, 70, 177};
    assertThat(OutlierSearch.USUAL.byScatter(line(x, y, 1)))
        .isEqualTo(new OutlyingPoint.TooFewPoints(3, 4));
    assertThat(OutlierSearch.USUAL.byUncertainty(line(x, y, 1)))
        .isInstanceOf(OutlyingPoint.NotAttributable.class);
    assertThat(OutlierSearch.USUAL.byUncertainty(line(x, y, 100)))
        .isInstanceOf(OutlyingPoint.NoneFound.class);
  }

  @Test
  void ofTwoPointsNothingCanBeSaid() {
    WeightedLine line = line(new double[] {1, 2}, new double[] {1, 2}, 1);
    assertThat(OutlierSearch.USUAL.byScatter(line)).isEqualTo(new OutlyingPoint.TooFewPoints(2, 4));
    assertThat(OutlierSearch.USUAL.byUncertainty(line))
        .isEqualTo(new OutlyingPoint.TooFewPoints(2, 3));
  }

  @Test
  void pointsOnTheLineButForRoundingNameNobody() {
    double[] x = {0.1, 0.2, 0.3, 0.7, 0.9};
    double[] y = Arrays.stream(x).map(v -> 100 + 59.16 * v).toArray();
    assertThat(OutlierSearch.USUAL.byScatter(line(x, y, 1e-9)))
        .isEqualTo(new OutlyingPoint.NoneFound(1));
  }

  @Test
  void onePointOffFourOnALineIsBeyondAllChance() {
    double[] x = {0, 1, 2, 3, 4};
    double[] y = {0, 10, 25, 30, 40};
    assertThat(OutlierSearch.USUAL.byScatter(line(x, y, 1)))
        .isEqualTo(new OutlyingPoint.Named(2, Double.POSITIVE_INFINITY, 0));
  }

  @Test
  void aPointAloneAtItsXIsNeverNamed() {
    // The line goes through it wherever it lies: the scatter is all at the other x.
    double[] x = {1, 1, 1, 1, 5};
    double[] y = {0, 0.1, -0.1, 9, 400};
    WeightedLine line = line(x, y, 0.1);
    assertThat(line.points().get(4).standardized()).isEmpty();
    assertThat(line.externallyStudentized(4)).isEmpty();
    assertThat(OutlierSearch.USUAL.byScatter(line))
        .asInstanceOf(InstanceOfAssertFactories.type(OutlyingPoint.Named.class))
        .satisfies(named -> assertThat(named.index()).isEqualTo(3));
  }

  @Test
  void aSignificanceOutside0To1IsRefused() {
    assertThatThrownBy(() -> new OutlierSearch(0)).hasMessageContaining("above 0 and below 1");
  }
}
