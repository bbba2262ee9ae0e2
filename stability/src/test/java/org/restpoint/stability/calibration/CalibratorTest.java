package org.restpoint.stability.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.calibration.CalibrationOutcome.SlopeBasis;
import org.restpoint.stability.electrode.Nernst;

/** What a person is told of two standards or more. */
class CalibratorTest {

  private static final Instant MORNING = Instant.parse("2026-04-02T08:00:00Z");

  private static final Calibrator NITRATE = new Calibrator(-1, Standards.LIMITS);

  /** Two standards a decade apart, so that the slope is the difference of their potentials. */
  private static CalibrationOutcome decade(double slope) {
    return NITRATE.judge(
        List.of(Standards.at(1e-4, 300), Standards.at(1e-3, 300 + slope)), Optional.empty());
  }

  private static Reason reason(CalibrationOutcome outcome) {
    assertThat(outcome.accepted()).isFalse();
    assertThat(outcome.reasons()).hasSize(1);
    return outcome.reasons().get(0);
  }

  @Test
  void aHealthyElectrodeIsAccepted() {
    CalibrationOutcome outcome = decade(-57.5);
    assertThat(outcome.accepted()).isTrue();
    assertThat(outcome.basis()).isEqualTo(SlopeBasis.FITTED);
    ResponseCurve line = outcome.curve().orElseThrow();
    assertThat(line.slopeMillivoltsPerDecade()).isCloseTo(-57.5, within(1e-9));
    assertThat(line.slopePercent(-1)).isCloseTo(97.195, within(0.001));
    assertThat(line.referenceCelsius()).isEqualTo(25);
    assertThat(outcome.points())
        .extracting(StandardPoint::millivolts)
        .containsExactly(300.0, 242.5);
  }

  @Test
  void aSlopeAtALimitIsAccepted() {
    ResponseCurve line = decade(-57.5).curve().orElseThrow();
    double percent = line.slopePercent(-1);
    for (SlopeLimits limits :
        List.of(new SlopeLimits(percent, 120), new SlopeLimits(50, percent))) {
      assertThat(
              new Calibrator(-1, limits).judge(decade(-57.5).points(), Optional.empty()).accepted())
          .isTrue();
    }
  }

  @Test
  void aTiredMembraneIsRefusedWithWhatToDo() {
    CalibrationOutcome outcome = decade(-50);
    assertThat(reason(outcome))
        .isEqualTo(
            new Reason(
                "slope-low",
                "the slope is -50.00 mV/decade, 84.5 % of the ideal -59.16 at 25.0 °C; accepted are"
                    + " 90.0 to 103.0 %",
                "Read the standards again with fresh portions, rinsed and blotted between them; look"
                    + " for an air bubble; soak the electrode; if it stays low, the membrane is"
                    + " ageing."));
    assertThat(outcome.curve()).isPresent();
  }

  @Test
  void aSlopeTooGoodToBeTrueIsRefusedWithWhatToDo() {
    assertThat(reason(decade(-65)))
        .isEqualTo(
            new Reason(
                "slope-high",
                "the slope is -65.00 mV/decade, 109.9 % of the ideal -59.16 at 25.0 °C; accepted are"
                    + " 90.0 to 103.0 %",
                "Read the standards again with fresh portions: one of them is likely diluted,"
                    + " contaminated or swapped, or the electrode carried solution from one to the"
                    + " next."));
  }

  @Test
  void swappedWiresAreNamed() {
    assertThat(reason(decade(58)))
        .isEqualTo(
            new Reason(
                "slope-reversed",
                "the slope is 58.00 mV/decade, -98.0 % of the ideal -59.16 at 25.0 °C: it has the"
                    + " wrong sign",
                "Look whether electrode and reference are swapped at the meter, whether the meter"
                    + " shows the potential with its sign, and whether standards were swapped."));
  }

  @Test
  void anElectrodeThatDoesNotAnswerIsNamedWhateverTheSignOfItsNoise() {
    String remedy =
        "Look whether the electrode is connected, has its cap off and stands in the solution.";
    CalibrationOutcome flat = decade(0);
    assertThat(reason(flat))
        .isEqualTo(new Reason("slope-none", "the potential is the same in all standards", remedy));
    assertThat(flat.curve()).isEmpty();
    assertThat(reason(decade(0.4)))
        .isEqualTo(
            new Reason(
                "slope-none",
                "the potential is nearly the same in all standards: the slope is 0.40 mV/decade,"
                    + " -0.7 % of the ideal -59.16 at 25.0 °C",
                remedy));
    assertThat(reason(decade(-0.4)).code()).isEqualTo("slope-none");
    assertThat(decade(0.4).curve()).isPresent();
  }

  @Test
  void aSlopeJustBelowALimitIsNotShownAsTheLimit() {
    // 89.96 % would be 90.0 with one decimal, among "accepted are 90.0 to 103.0 %".
    double slope = 0.8996 * Nernst.idealSlopeMillivoltsPerDecade(-1, 25);
    assertThat(reason(decade(slope)).text()).contains(", 89.96 % of the ideal");
  }

  @Test
  void standardsAlikeDrawNoLine() {
    Reason alike =
        new Reason(
            "standards-alike",
            "all standards have the same concentration, so no slope can be drawn",
            "Read a standard of another concentration, a decade away if there is one.");
    List<StandardPoint> same = List.of(Standards.at(1e-3, 300), Standards.at(1e-3, 299));
    assertThat(reason(NITRATE.judge(same, Optional.empty()))).isEqualTo(alike);
    List<StandardPoint> sameButWarmer =
        List.of(Standards.at(1e-3, 300, 20), Standards.at(1e-3, 299, 25));
    assertThat(reason(NITRATE.judge(sameButWarmer, Optional.empty()))).isEqualTo(alike);
    // The same solution, once said in mg/L as N and once in mg/L of nitrate to four digits.
    List<StandardPoint> sameInOtherUnits =
        List.of(Standards.at(20 / 14007.0, 300), Standards.at(88.53 / 62004.0, 299.9));
    CalibrationOutcome outcome = NITRATE.judge(sameInOtherUnits, Optional.empty());
    assertThat(reason(outcome)).isEqualTo(alike);
    assertThat(outcome.curve()).isEmpty();
    assertThat(outcome.points()).hasSize(2);
  }

  @Test
  void standardsWhoseTemperaturesCancelTheirConcentrationsDrawNoLine() {
    // log10 c · T is -3 · 300 K of both.
    List<StandardPoint> points =
        List.of(
            Standards.at(1e-3, 300, 26.85), Standards.at(Math.pow(10, -900 / 280.0), 290, 6.85));
    assertThat(reason(NITRATE.judge(points, Optional.empty())))
        .isEqualTo(
            new Reason(
                "standards-alike",
                "the standards differ by their temperatures as much as by their concentrations, so"
                    + " no slope can be drawn",
                "Bring the standards to the same temperature and read them again."));
  }

  @Test
  void theScatterAboutTheLineIsToldFromThreeStandardsOn() {
    // 1 mV up in the middle: r = (-1/3, 2/3, -1/3), s² = (6/9)/1.
    List<StandardPoint> points =
        List.of(Standards.at(1e-4, 300), Standards.at(1e-3, 243), Standards.at(1e-2, 184));
    CalibrationOutcome outcome = NITRATE.judge(points, Optional.empty());
    double s = Math.sqrt(2 / 3.0);
    assertThat(outcome.residualMillivolts().orElseThrow()).isCloseTo(s, within(1e-9));
    ResponseCurve line = outcome.curve().orElseThrow();
    // Σ(x − x̄)² = 2, x̄ = −3.
    assertThat(line.covariance().of(1, 1)).isCloseTo(s * s / 2, within(1e-9));
    assertThat(line.covariance().of(0, 0)).isCloseTo(s * s * (1 / 3.0 + 9 / 2.0), within(1e-9));
    assertThat(line.covariance().of(0, 1)).isCloseTo(s * s * 3 / 2, within(1e-9));
  }

  @Test
  void standardsKnownWorseThanTheyScatterCountWithWhatIsKnownBeforehand() {
    List<StandardPoint> points =
        List.of(
            Standards.at(1e-4, 0.02, 300, 0.3, 25),
            Standards.at(1e-3, 0.02, 242, 0.3, 25),
            Standards.at(1e-2, 0.02, 184, 0.3, 25));
    ResponseCurve line = NITRATE.judge(points, Optional.empty()).curve().orElseThrow();
    double standard = 58 * 0.02 / Math.log(10);
    assertThat(line.covariance().of(1, 1))
        .isCloseTo((0.3 * 0.3 + standard * standard) / 2, within(1e-9));
  }

  @Test
  void aCalibrationWithoutAStandardOrAnIonWithoutAChargeIsAnError() {
    assertThatThrownBy(() -> NITRATE.judge(List.of(), Optional.empty()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a calibration needs a standard");
    assertThatThrownBy(() -> new Calibrator(0, Standards.LIMITS))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("an ion has a charge");
  }

  /** Five standards known to 0.3 mV, the middle one 4 mV off. */
  private static CalibrationOutcome withOneOff() {
    List<StandardPoint> points = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      double off = i == 2 ? 4 : 0;
      points.add(
          new StandardPoint(
              "s" + i, Math.pow(10, -5 + i), 0, 1, 300 - 57.5 * i + off, 0.3, 25, MORNING));
    }
    return NITRATE.judge(points, Optional.empty());
  }

  @Test
  void anOutlyingStandardIsNamedAndNotDropped() {
    CalibrationOutcome outcome = withOneOff();

    assertThat(outcome.accepted()).isTrue();
    assertThat(outcome.fits()).hasSize(5);
    assertThat(outcome.remarks())
        .extracting(Reason::code)
        .containsExactly("standards-scatter", "standard-outlying");
    // r = 4·(1 − 1/5) in the middle of five.
    assertThat(outcome.remarks().get(1).text())
        .isEqualTo("standard s2 lies +3.20 mV off the line of all, more than chance explains");
  }

  @Test
  void standardsThatScatterMoreThanTheyMayMakeTheCalibrationThatMuchLessCertain() {
    CalibrationOutcome outcome = withOneOff();

    // χ² = 4²·(1 − 1/5)/0.3² with 3 degrees of freedom.
    double birge = Math.sqrt(16 * 0.8 / 0.09 / 3);
    assertThat(outcome.remarks().get(0).text())
        .startsWith("the standards scatter about their line 6.9 times as far");
    assertThat(outcome.curve().orElseThrow().slopeStandardUncertainty())
        .isCloseTo(birge * 0.3 / Math.sqrt(10), within(1e-9));
  }

  @Test
  void theLeverageOfTheOutermostOfFiveEvenStandardsIsThreeFifths() {
    assertThat(withOneOff().fits())
        .extracting(CalibrationOutcome.PointFit::leverage)
        .satisfies(h -> assertThat(h.get(0)).isCloseTo(0.6, within(1e-9)))
        .satisfies(h -> assertThat(h.get(2)).isCloseTo(0.2, within(1e-9)));
  }

  @Test
  void whatAllStandardsOwnToTheirStockMovesTheOffsetAlone() {
    List<StandardPoint> points =
        List.of(Standards.at(1e-4, 0, 300, 0.1, 25), Standards.at(1e-3, 0, 242.5, 0.1, 25));
    Calibrator fromStock =
        new Calibrator(-1, Standards.LIMITS, new LowEnd.Straight(), Compensation.ideal(), 0.02);

    ResponseCurve with = fromStock.judge(points, Optional.empty()).curve().orElseThrow();
    ResponseCurve without = NITRATE.judge(points, Optional.empty()).curve().orElseThrow();

    double offset = 57.5 * 0.02 / Math.log(10);
    assertThat(with.covariance().of(0, 0) - without.covariance().of(0, 0))
        .isCloseTo(offset * offset, within(1e-9));
    assertThat(with.covariance().of(1, 1)).isEqualTo(without.covariance().of(1, 1));
  }

  @Test
  void anActivityCoefficientCountsAsTheConcentrationItLeaves() {
    StandardPoint thin = Standards.at(1e-4, 300);
    StandardPoint salty = new StandardPoint("salty", 1e-3 / 0.8, 0, 0.8, 242.5, 0, 25, MORNING);

    ResponseCurve curve =
        NITRATE.judge(List.of(thin, salty), Optional.empty()).curve().orElseThrow();

    assertThat(curve.slopeMillivoltsPerDecade()).isCloseTo(-57.5, within(1e-9));
    RestedSample sample = RestedSample.of(242.5, 0.1, 25, 0).withActivityCoefficient(0.5, 0.04);
    assertThat(curve.read(sample).molesPerLitre()).isCloseTo(2e-3, within(1e-12));
  }
}
