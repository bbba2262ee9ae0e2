package org.restpoint.stability.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.calibration.CalibrationOutcome.SlopeBasis;

class ResponseCurveTest {

  /** The derivatives are differences over a thousandth of an uncertainty. */
  private static final double DIFFERENCES = 1e-8;

  private static final ResponseCurve LINE = Standards.curve(80, -57, 25, 4, 0.25, 0.9);

  @Test
  void theUncertaintyOfALineCountsTheCovarianceOfItsParts() {
    // x = −3: u² = [0.3² + 4 + 9·0.25 − 6·0.9]/57².
    ReadBack back = LINE.read(RestedSample.of(80 + 3 * 57, 0.3, 25, 0));
    assertThat(back.log10MolesPerLitre()).isCloseTo(-3, within(1e-12));
    assertThat(back.molesPerLitre()).isCloseTo(1e-3, within(1e-12));
    assertThat(back.relativeStandardUncertainty() / Math.log(10))
        .isCloseTo(Math.sqrt(0.09 + 4 + 2.25 - 5.4) / 57, within(DIFFERENCES));
  }

  @Test
  void temperatureAddsItsOwnUncertaintyAndTheWholeCompensation() {
    // At 10 °C, T/Tref = 283.15/298.15; E is that of 10⁻³ mol/L there.
    double ratio = 283.15 / 298.15;
    double x = -3 * ratio;
    ReadBack back = LINE.read(RestedSample.of(80 - 57 * x, 0.3, 10, 0.5));
    assertThat(back.log10MolesPerLitre()).isCloseTo(-3, within(1e-12));
    double line = (0.09 + 4 + x * x * 0.25 + 2 * x * 0.9) / (57 * 57 * ratio * ratio);
    double temperature = 3 * 0.5 / 283.15;
    double compensation = -3 - x;
    assertThat(back.relativeStandardUncertainty() / Math.log(10))
        .isCloseTo(
            Math.sqrt(line + temperature * temperature + compensation * compensation / 3),
            within(DIFFERENCES));
  }

  @Test
  void atOneMolePerLitreTemperatureAddsNothing() {
    ResponseCurve exact = Standards.curve(80, -57, 25, 0, 0, 0);
    ReadBack back = exact.read(RestedSample.of(80, 0, 5, 2));
    assertThat(back.log10MolesPerLitre()).isZero();
    assertThat(back.relativeStandardUncertainty() / Math.log(10)).isZero();
  }

  @Test
  void aPotentialNoElectrodeGivesReadsBackAsNoConcentrationOrAnInfiniteOne() {
    assertThat(LINE.read(RestedSample.of(99_999, 0, 25, 0)).molesPerLitre()).isZero();
    assertThat(LINE.read(RestedSample.of(-99_999, 0, 25, 0)).molesPerLitre()).isInfinite();
  }

  @Test
  void aTemperatureNotAboveAbsoluteZeroIsRefused() {
    assertThatThrownBy(() -> LINE.read(RestedSample.of(100, 0.1, -273.15, 0.5)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a temperature is above absolute zero, not -273.15 °C");
  }

  @Test
  void aLineThatCannotBeIsRefused() {
    for (double slope : new double[] {0, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> Standards.curve(0, slope, 25, 0, 0, 0))
          .hasMessage("a slope is a finite number other than 0");
    }
    assertThatThrownBy(() -> Standards.curve(Double.NaN, 57, 25, 0, 0, 0))
        .hasMessage("an offset is a finite number");
    for (double[] variances :
        new double[][] {{-1, 0, 0}, {0, -1, 0}, {Double.NaN, 0, 0}, {0, 0, Double.NaN}}) {
      assertThatThrownBy(() -> Standards.curve(0, 57, 25, variances[0], variances[1], variances[2]))
          .hasMessage("a variance is a finite number, 0 or above");
    }
    assertThatThrownBy(() -> Standards.curve(0, 57, -300, 0, 0, 0))
        .hasMessage("a temperature is above absolute zero, not -300.0 °C");
  }

  @Test
  void aStandardThatCannotBeIsRefused() {
    for (double moles : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> Standards.at(moles, 100))
          .hasMessage("a standard's concentration is above zero");
    }
    assertThatThrownBy(() -> Standards.at(1e-3, Double.NaN))
        .hasMessage("a potential is a finite number");
    for (double u : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> Standards.at(1e-3, u, 100, 0, 25))
          .hasMessage("an uncertainty is a finite number, 0 or above");
      assertThatThrownBy(() -> Standards.at(1e-3, 0, 100, u, 25))
          .hasMessage("an uncertainty is a finite number, 0 or above");
    }
    assertThatThrownBy(() -> Standards.at(1e-3, 100, -280))
        .hasMessage("a temperature is above absolute zero, not -280.0 °C");
  }

  @Test
  void slopeLimitsThatLeaveNothingAreRefused() {
    for (double[] limits :
        new double[][] {
          {0, 103}, {-1, 103}, {103, 90}, {90, 90}, {90, Double.NaN}, {90, Double.POSITIVE_INFINITY}
        }) {
      assertThatThrownBy(() -> new SlopeLimits(limits[0], limits[1]))
          .hasMessage("slope limits are two percentages above zero, the lower first");
    }
  }

  @Test
  void anAcceptedCalibrationHasACurve() {
    assertThatThrownBy(
            () ->
                new CalibrationOutcome(
                    List.of(),
                    List.of(),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    SlopeBasis.FITTED,
                    List.of(),
                    List.of()))
        .hasMessage("an accepted calibration has a curve");
  }
}
