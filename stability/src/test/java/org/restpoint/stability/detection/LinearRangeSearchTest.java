package org.restpoint.stability.detection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class LinearRangeSearchTest {

  private static final LinearRangeSearch FIVE_PERCENT =
      new LinearRangeSearch(new Linearity.WithinShare(0.05), 45);

  private static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }

  private static LinearRange.Found found(LinearRange range) {
    assertThat(range).isInstanceOf(LinearRange.Found.class);
    return (LinearRange.Found) range;
  }

  @Test
  void fluorideIsLinearWithoutItsLowestStandard() {
    Published table = Published.table("fluoride-standards");
    LinearRange.Found range =
        found(
            FIVE_PERCENT.among(
                table.numbers("milligramsPerLitre"), table.numbers("millivolts"), ones(6)));
    assertThat(range.lowest()).isEqualTo(0.4);
    assertThat(range.highest()).isEqualTo(2.0);
    assertThat(range.line().estimate().slope()).isCloseTo(-68.385, within(0.0005));
    assertThat(range.line().estimate().intercept()).isCloseTo(229.624, within(0.0005));
    assertThat(range.line().determination()).isCloseTo(0.99983, within(0.000005));
    assertThat(range.decades()).isCloseTo(Math.log10(5), within(1e-12));
  }

  @Test
  void calciumIsLinearThroughout() {
    Published table = Published.table("calcium-standards");
    double[] millivolts =
        Arrays.stream(table.numbers("volts")).map(volts -> 1000 * volts).toArray();
    LinearRangeSearch search = new LinearRangeSearch(new Linearity.WithinMillivolts(1.5), 20);
    LinearRange.Found range =
        found(search.among(table.numbers("molesPerLitre"), millivolts, ones(7)));
    assertThat(range.lowest()).isEqualTo(1e-5);
    assertThat(range.highest()).isEqualTo(1e-2);
    assertThat(range.largestResidual()).isBetween(0.5, 1.5);
  }

  @Test
  void theLevelPartIsNoResponseHoweverLong() {
    double[] c = {1e-10, 1e-9, 1e-8, 1e-7, 1e-4, 1e-3, 1e-2};
    double[] y = {100, 100, 100, 100, 218, 277, 336};
    assertThat(found(FIVE_PERCENT.among(c, y, ones(7))).lowest()).isEqualTo(1e-4);
    double[] creeping = {100, 101, 102, 103, 218, 277, 336};
    assertThat(found(FIVE_PERCENT.among(c, creeping, ones(7))).lowest()).isEqualTo(1e-4);
    LinearRangeSearch any = new LinearRangeSearch(new Linearity.WithinShare(0.05), 0.5);
    assertThat(found(any.among(c, creeping, ones(7))).highest()).isEqualTo(1e-7);
  }

  @Test
  void standardsOfOneConcentrationStayTogether() {
    double[] c = {1e-5, 1e-4, 1e-3, 1e-3, 1e-2};
    double[] y = {0, 59, 118, 150, 177};
    // The second reading of 1e-3 lies 32 mV off, so no run holds that concentration.
    assertThat(FIVE_PERCENT.among(c, y, ones(5))).isEqualTo(new LinearRange.NoneFound(5));
  }

  @Test
  void twoConcentrationsHaveNoRange() {
    assertThat(FIVE_PERCENT.among(new double[] {1, 10}, new double[] {0, 59}, ones(2)))
        .isEqualTo(new LinearRange.NoneFound(2));
  }

  @Test
  void ofTwoRangesAsWideTheOneWithMoreStandardsCounts() {
    double[] c = {1e-6, 1e-5, 1e-4, 1e-2, 3e-2, 1e-1, 1};
    double[] y = {0, 59, 118, 350, 350 + 59 * Math.log10(3), 409, 468};
    LinearRange.Found range = found(FIVE_PERCENT.among(c, y, ones(7)));
    assertThat(range.lowest()).isEqualTo(1e-2);
    assertThat(range.line().points()).hasSize(4);
  }

  @Test
  void aToleranceNotAbove0IsRefused() {
    assertThatThrownBy(() -> new Linearity.WithinShare(0)).hasMessageContaining("above 0");
    assertThatThrownBy(() -> new Linearity.WithinMillivolts(Double.POSITIVE_INFINITY))
        .hasMessageContaining("finite");
    assertThatThrownBy(() -> new LinearRangeSearch(new Linearity.WithinShare(1), 0))
        .hasMessageContaining("above 0");
  }
}
