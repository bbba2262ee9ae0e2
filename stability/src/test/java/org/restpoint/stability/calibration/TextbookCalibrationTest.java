package org.restpoint.stability.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

/** Worked examples of textbooks, each to the last digit it prints. */
class TextbookCalibrationTest {

  private static final Calibrator DIVALENT = new Calibrator(2, Standards.LIMITS);

  private static CalibrationOutcome judged(double[] molesPerLitre, double[] millivolts) {
    return DIVALENT.judge(Standards.at(molesPerLitre, millivolts), Optional.empty());
  }

  @Test
  void sevenCalciumStandardsGiveTheLectureLineAndSample() {
    Published table = Published.table("calcium-standards");
    double[] millivolts =
        Arrays.stream(table.numbers("volts")).map(volts -> 1000 * volts).toArray();
    CalibrationOutcome outcome = judged(table.numbers("molesPerLitre"), millivolts);
    assertThat(outcome.accepted()).isTrue();
    ResponseCurve line = outcome.curve().orElseThrow();
    assertThat(line.slopeMillivoltsPerDecade()).isCloseTo(30.3, within(0.05));
    assertThat(line.offsetMillivolts()).isCloseTo(27.2, within(0.05));
    assertThat(line.read(RestedSample.of(-84, 0, 25, 0)).molesPerLitre())
        .isCloseTo(2.14e-4, within(0.005e-4));
    // Not printed there: least squares in exact arithmetic on the same seven points.
    assertThat(outcome.residualMillivolts().orElseThrow()).isCloseTo(0.9226, within(0.00005));
    assertThat(Math.sqrt(line.covariance().of(1, 1))).isCloseTo(0.3470, within(0.00005));
    assertThat(Math.sqrt(line.covariance().of(0, 0))).isCloseTo(1.235, within(0.0005));
  }

  @Test
  void threeCalciumStandardsGiveTheBooksLineAndExpectedPotential() {
    Published table = Published.table("calcium-example-5-2");
    CalibrationOutcome outcome =
        judged(table.numbers("molesPerLitre"), table.numbers("millivolts"));
    ResponseCurve line = outcome.curve().orElseThrow();
    assertThat(outcome.accepted()).isTrue();
    // The three points lie on the line, so only rounding is left.
    assertThat(line.slopeMillivoltsPerDecade()).isCloseTo(29, within(1e-9));
    assertThat(line.offsetMillivolts()).isCloseTo(245, within(1e-9));
    assertThat(outcome.residualMillivolts().orElseThrow()).isCloseTo(0, within(1e-9));
    assertThat(line.millivoltsAt(5e-4, 25)).isCloseTo(149.3, within(0.05));
  }

  @Test
  void twoMagnesiumStandardsReadTheBooksTestSolution() {
    Published table = Published.table("magnesium-example-5-4");
    CalibrationOutcome outcome =
        judged(table.numbers("molesPerLitre"), table.numbers("millivolts"));
    assertThat(outcome.accepted()).isTrue();
    assertThat(outcome.residualMillivolts()).isEmpty();
    assertThat(outcome.curve().orElseThrow().read(RestedSample.of(125, 0, 25, 0)).molesPerLitre())
        .isCloseTo(2.6e-4, within(0.05e-4));
  }

  @Test
  void oneMillivoltIsFourPercentOfAMonovalentIonAndATenthIsATenthOfThat() {
    // J. Wang, Analytical Electrochemistry, 2nd edition, Wiley-VCH 2000, p. 146: "about 4 %" for
    // 1 mV, "about 0.4 %" for 0.1 mV.
    ResponseCurve line = Standards.curve(0, 59.159, 25, 0, 0, 0);
    assertThat(line.read(RestedSample.of(100, 1, 25, 0)).relativeStandardUncertainty())
        .isCloseTo(0.04, within(0.005));
    assertThat(line.read(RestedSample.of(100, 0.1, 25, 0)).relativeStandardUncertainty())
        .isCloseTo(0.004, within(0.0005));
    double change =
        line.read(RestedSample.of(101, 0, 25, 0)).molesPerLitre()
                / line.read(RestedSample.of(100, 0, 25, 0)).molesPerLitre()
            - 1;
    // 10^(1/59.159) − 1.
    assertThat(change).isCloseTo(0.03969, withinPercentage(0.02));
  }
}
