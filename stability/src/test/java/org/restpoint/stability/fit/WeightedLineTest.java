package org.restpoint.stability.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class WeightedLineTest {

  private static double[] all(double value, int n) {
    double[] values = new double[n];
    Arrays.fill(values, value);
    return values;
  }

  @Test
  void theNorrisDataAtOneUncertaintyGiveNistsCertifiedValues() {
    Published norris = Published.table("norris");
    double u = 0.884796396144373;
    WeightedLine line = WeightedLine.through(norris.numbers("x"), norris.numbers("y"), all(u, 36));
    LineEstimate estimate = line.estimate();
    // Twelve digits: of the fifteen certified, double arithmetic on these data loses two or three.
    assertThat(estimate.intercept()).isCloseTo(-0.262323073774029, withinPercentage(1e-10));
    assertThat(estimate.slope()).isCloseTo(1.00211681802045, withinPercentage(1e-10));
    assertThat(Math.sqrt(estimate.interceptVariance()))
        .isCloseTo(0.232818234301152, withinPercentage(1e-10));
    assertThat(Math.sqrt(estimate.slopeVariance()))
        .isCloseTo(0.429796848199937e-3, withinPercentage(1e-10));
    assertThat(line.residualDeviation().orElseThrow()).isCloseTo(u, withinPercentage(1e-10));
    assertThat(line.consistency().chiSquare()).isCloseTo(34, withinPercentage(1e-9));
    assertThat(line.determination()).isCloseTo(0.999993745883712, withinPercentage(1e-10));
  }

  @Test
  void theGuidesThermometerPredictsItsCorrectionAt30() {
    Published thermometer = Published.table("thermometer");
    double[] above20 =
        Arrays.stream(thermometer.numbers("celsius")).map(celsius -> celsius - 20).toArray();
    double[] correction = thermometer.numbers("correction");
    WeightedLine line = WeightedLine.through(above20, correction, all(0.0035, 11));
    assertThat(line.estimate().at(10)).isCloseTo(-0.1494, within(0.00005));
    assertThat(Math.sqrt(line.estimate().varianceAt(10))).isCloseTo(0.0041, within(0.00005));
    assertThat(line.consistency().consistent()).isTrue();
  }

  @Test
  void theBooksWeightedAbsorbancesReadBackAsPrinted() {
    Published table = Published.table("weighted-absorbance");
    double[] x = table.numbers("microgramsPerMillilitre");
    double[] y = table.numbers("absorbance");
    LineEstimate weighted =
        WeightedLine.through(x, y, table.numbers("standardDeviation")).estimate();
    // Each within half of the last digit printed.
    assertThat(weighted.slope()).isCloseTo(0.0738, within(0.00005));
    assertThat(weighted.intercept()).isCloseTo(0.0091, within(0.00005));
    assertThat(weighted.readBack(0.100, 0).x()).isCloseTo(1.23, within(0.005));
    assertThat(weighted.readBack(0.600, 0).x()).isCloseTo(8.01, within(0.005));
    LineEstimate unweighted = WeightedLine.through(x, y, all(1, 6)).estimate();
    assertThat(unweighted.slope()).isCloseTo(0.0725, within(0.00005));
    assertThat(unweighted.intercept()).isCloseTo(0.0133, within(0.00005));
    assertThat(unweighted.readBack(0.100, 0).x()).isCloseTo(1.20, within(0.005));
    assertThat(unweighted.readBack(0.600, 0).x()).isCloseTo(8.09, within(0.005));
  }

  @Test
  void theCalciumStandardsGiveTheLectureLine() {
    Published table = Published.table("calcium-standards");
    double[] decades = Arrays.stream(table.numbers("molesPerLitre")).map(Math::log10).toArray();
    WeightedLine line = WeightedLine.through(decades, table.numbers("volts"), all(0.001, 7));
    assertThat(line.estimate().slope()).isCloseTo(0.0303, within(0.00005));
    assertThat(line.estimate().intercept()).isCloseTo(0.0272, within(0.00005));
    assertThat(Math.pow(10, line.estimate().readBack(-0.084, 0.001).x()))
        .isCloseTo(2.14e-4, within(0.005e-4));
  }

  @Test
  void consistentScatterInflatesNothingAndInconsistentScatterDoes() {
    double[] x = {1, 2, 3, 4};
    double[] y = {1, -1, -1, 1};
    // Flat line through 0, Σr² = 4, ν = 2; the 95 % quantile of χ²(2) is −2 ln 0.05 = 5.9915.
    double limit = -2 * Math.log(0.05);
    double just = Math.sqrt(4 / limit);
    WeightedLine consistent = WeightedLine.through(x, y, all(just * 1.0001, 4));
    assertThat(consistent.consistency().inflation()).isEqualTo(1);
    assertThat(consistent.inflatedEstimate()).isEqualTo(consistent.estimate());
    WeightedLine inconsistent = WeightedLine.through(x, y, all(just * 0.9999, 4));
    assertThat(inconsistent.consistency().consistent()).isFalse();
    assertThat(inconsistent.consistency().probability()).isCloseTo(0.05, within(0.0001));
    double ratio = Math.sqrt(inconsistent.consistency().chiSquare() / 2);
    assertThat(inconsistent.consistency().inflation()).isEqualTo(ratio);
    assertThat(inconsistent.inflatedEstimate().slopeVariance())
        .isCloseTo(inconsistent.estimate().slopeVariance() * ratio * ratio, withinPercentage(1e-9));
    // Inflated by its own scatter the line has the textbook's variance s²/Σ(x−x̄)² = 2/5.
    assertThat(inconsistent.inflatedEstimate().slopeVariance())
        .isCloseTo(0.4, withinPercentage(1e-9));
  }

  @Test
  void twoPointsAreConsistentAndJoined() {
    WeightedLine line =
        WeightedLine.through(new double[] {1, 3}, new double[] {10, 4}, new double[] {1, 2});
    assertThat(line.estimate().slope()).isCloseTo(-3, within(1e-14));
    assertThat(line.residualDeviation()).isEmpty();
    assertThat(line.consistency().inflation()).isEqualTo(1);
    assertThat(line.consistency().probability()).isEqualTo(1);
    assertThat(line.points().get(0).standardized()).isEmpty();
  }

  @Test
  void whatCannotBeFittedIsRefusedWithItsPlace() {
    double[] two = {1, 2};
    assertThatThrownBy(() -> WeightedLine.through(new double[] {1, 1}, two, two))
        .hasMessage("all points have the same x: no line goes through them");
    assertThatThrownBy(() -> WeightedLine.through(two, two, new double[] {1, 0}))
        .hasMessage("the standard uncertainty of point 2 is above 0 and finite, found 0.0");
    assertThatThrownBy(() -> WeightedLine.through(two, new double[] {Double.NaN, 1}, two))
        .hasMessage("nothing is fitted through point 1 at (1.0, NaN)");
    assertThatThrownBy(() -> WeightedLine.through(two, two, new double[] {1}))
        .hasMessageContaining("2, 2 and 1");
    assertThatThrownBy(() -> new LineEstimate(0, Double.NaN, 0, 0, 0))
        .hasMessageContaining("finite");
    assertThatThrownBy(() -> new LineEstimate(0, 1, -1, 0, 0)).hasMessageContaining("variances");
    assertThatThrownBy(() -> new Consistency(-1, 2)).hasMessageContaining("0 or above");
  }
}
