package org.restpoint.stability.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.calibration.CalibrationOutcome.SlopeBasis;

class OnePointCalibrationTest {

  private static final Calibrator NITRATE = new Calibrator(-1, Standards.LIMITS);

  /** -57 mV/decade at 25 °C, its slope known to 0.5 mV/decade. */
  private static final ResponseCurve LAST = Standards.curve(70, -57, 25, 1, 0.25, 0.4);

  private static CalibrationOutcome judged(StandardPoint point, Optional<ResponseCurve> last) {
    return NITRATE.judge(List.of(point), last);
  }

  @Test
  void theLastSlopeIsKeptAndTheOffsetMoves() {
    CalibrationOutcome outcome = judged(Standards.at(1e-3, 250), Optional.of(LAST));
    assertThat(outcome.accepted()).isTrue();
    assertThat(outcome.basis()).isEqualTo(SlopeBasis.LAST_ACCEPTED);
    assertThat(outcome.residualMillivolts()).isEmpty();
    ResponseCurve line = outcome.curve().orElseThrow();
    assertThat(line.slopeMillivoltsPerDecade()).isEqualTo(-57);
    assertThat(line.referenceCelsius()).isEqualTo(25);
    assertThat(line.offsetMillivolts()).isCloseTo(79, within(1e-9));
    assertThat(line.read(RestedSample.of(250, 0, 25, 0)).log10MolesPerLitre())
        .isCloseTo(-3, within(1e-12));
    assertThat(line.read(RestedSample.of(250 - 57, 0, 25, 0)).log10MolesPerLitre())
        .isCloseTo(-2, within(1e-12));
  }

  @Test
  void aStandardAtAnotherTemperatureThanTheLastLineIsReadAtItsOwn() {
    StandardPoint point = Standards.at(1e-3, 250, 10);
    ResponseCurve line = judged(point, Optional.of(LAST)).curve().orElseThrow();
    assertThat(line.referenceCelsius()).isEqualTo(25);
    assertThat(line.millivoltsAt(1e-3, 10)).isCloseTo(250, within(1e-9));
    assertThat(line.millivoltsAt(1e-2, 10)).isCloseTo(250 - 57 * 283.15 / 298.15, within(1e-9));
  }

  @Test
  void withoutAnEarlierLineTheSlopeIsTheIdealOneAtTheStandardsTemperature() {
    CalibrationOutcome outcome = judged(Standards.at(1e-3, 250, 0), Optional.empty());
    assertThat(outcome.accepted()).isTrue();
    assertThat(outcome.basis()).isEqualTo(SlopeBasis.IDEAL);
    ResponseCurve line = outcome.curve().orElseThrow();
    assertThat(line.slopeMillivoltsPerDecade()).isCloseTo(-54.199, within(0.0005));
    assertThat(line.slopePercent(-1)).isCloseTo(100, within(1e-9));
    assertThat(line.referenceCelsius()).isZero();
    assertThat(line.millivoltsAt(1e-3, 0)).isCloseTo(250, within(1e-9));
  }

  @Test
  void theIdealSlopeIsOnlyAsGoodAsTheSlopeLimits() {
    ResponseCurve line = judged(Standards.at(1e-3, 250), Optional.empty()).curve().orElseThrow();
    // Root mean square of −10 … 3 %, evenly: √((27 + 1000)/(3 · 13)).
    double percent = Math.sqrt(1027 / 39.0);
    assertThat(100 * Math.sqrt(line.covariance().of(1, 1)) / 59.15935)
        .isCloseTo(percent, within(1e-5));
  }

  @Test
  void atItsOwnStandardTheSlopesUncertaintyDoesNotCount() {
    StandardPoint point = Standards.at(1e-3, 0.01, 250, 0.2, 25);
    for (Optional<ResponseCurve> last :
        List.of(Optional.of(LAST), Optional.<ResponseCurve>empty())) {
      ResponseCurve line = judged(point, last).curve().orElseThrow();
      double slope = line.slopeMillivoltsPerDecade();
      double standard = slope * 0.01 / Math.log(10);
      double u =
          line.read(RestedSample.of(250, 0.3, 25, 0)).relativeStandardUncertainty() / Math.log(10);
      assertThat(u)
          .isCloseTo(
              Math.sqrt(0.3 * 0.3 + 0.2 * 0.2 + standard * standard) / Math.abs(slope),
              within(1e-9));
    }
  }

  @Test
  void aDecadeFromItsStandardTheSlopesUncertaintyCountsOnce() {
    ResponseCurve line = judged(Standards.at(1e-3, 250), Optional.of(LAST)).curve().orElseThrow();
    assertThat(
            line.read(RestedSample.of(250 - 57, 0, 25, 0)).relativeStandardUncertainty()
                / Math.log(10))
        .isCloseTo(0.5 / 57, within(1e-9));
    assertThat(
            line.read(RestedSample.of(250 + 57, 0, 25, 0)).relativeStandardUncertainty()
                / Math.log(10))
        .isCloseTo(0.5 / 57, within(1e-9));
  }

  @Test
  void aSlopeThatNoLongerFitsTheIonOrTheLimitsIsNotTakenOver() {
    Calibrator ammonium = new Calibrator(1, Standards.LIMITS);
    CalibrationOutcome outcome =
        ammonium.judge(List.of(Standards.at(1e-3, 250)), Optional.of(LAST));
    assertThat(outcome.accepted()).isFalse();
    assertThat(outcome.reasons())
        .containsExactly(
            new Reason(
                "slope-outdated",
                "in the last calibration, the slope is -57.00 mV/decade, -96.3 % of the ideal 59.16"
                    + " at 25.0 °C; accepted are 90.0 to 103.0 %",
                "The ion or the slope limits have changed since: calibrate with two standards or"
                    + " more."));
    Calibrator stricter = new Calibrator(-1, new SlopeLimits(98, 102));
    assertThat(stricter.judge(List.of(Standards.at(1e-3, 250)), Optional.of(LAST)).reasons())
        .extracting(Reason::code)
        .containsExactly("slope-outdated");
  }
}
