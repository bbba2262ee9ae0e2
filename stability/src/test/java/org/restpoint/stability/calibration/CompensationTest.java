package org.restpoint.stability.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.electrode.Nernst;

class CompensationTest {

  private static final SlopeLimits LIMITS = new SlopeLimits(80, 110);

  private static ResponseCurve nitrate(Compensation compensation) {
    return new ResponseCurve(
        80, -57, 0, 25, compensation, ResponseCurve.NO_DOUBT, ResponseCurve.NO_DOUBT);
  }

  private static double decadesOfDoubt(ResponseCurve curve, double log, double celsius) {
    double seen = curve.millivoltsAt(Math.pow(10, log), celsius);
    return curve.read(RestedSample.of(seen, 0, celsius, 0)).relativeStandardUncertainty()
        / Math.log(10);
  }

  /**
   * 1.0 mV/pH at 15 °C and 2 pH from it: what the textbook factor k = 0.05916 + 0.000198(t − 25) V
   * makes of −2 decades and −10 K is 0.000198 · 10 · 2 V.
   */
  @Test
  void aPhElectrodeTurnsAboutItsIsopotentialPoint() {
    ResponseCurve curve =
        new ResponseCurve(
            7 * 59.159,
            59.159,
            0,
            25,
            Compensation.isopotential(-7, 0),
            ResponseCurve.NO_DOUBT,
            ResponseCurve.NO_DOUBT);

    assertThat(curve.millivoltsAt(1e-7, 25)).isCloseTo(0, within(1e-9));
    assertThat(curve.millivoltsAt(1e-7, 60)).isCloseTo(0, within(1e-9));
    assertThat(curve.millivoltsAt(1e-9, 15) - curve.millivoltsAt(1e-9, 25))
        .isCloseTo(1000 * 0.000198 * 10 * 2, within(0.05));
  }

  @Test
  void aMeasuredCoefficientIsWhatTheSolutionItWasMeasuredInDoes() {
    ResponseCurve curve = nitrate(Compensation.measured(-3, -0.9, 0.1));

    assertThat(curve.millivoltsAt(1e-3, 26) - curve.millivoltsAt(1e-3, 25))
        .isCloseTo(-0.9, within(1e-9));
    // A decade lower the slope's own part is to be added: −57/298.15 · (−1) mV/K.
    assertThat(curve.millivoltsAt(1e-4, 26) - curve.millivoltsAt(1e-4, 25))
        .isCloseTo(-0.9 + 57 / 298.15, within(1e-9));
  }

  @Test
  void theUncertaintyOfACoefficientGrowsWithTheDifferenceInTemperature() {
    ResponseCurve curve = nitrate(Compensation.measured(-3, -0.9, 0.1));

    assertThat(decadesOfDoubt(curve, -3, 25)).isCloseTo(0, within(1e-9));
    assertThat(decadesOfDoubt(curve, -3, 15))
        .isCloseTo(0.1 * 10 / (57 * 288.15 / 298.15), within(1e-8));
    assertThat(decadesOfDoubt(curve, -3, 5))
        .isCloseTo(0.1 * 20 / (57 * 278.15 / 298.15), within(1e-8));
  }

  @Test
  void anIsopotentialPointKnownToATenthOfADecadeCountsByTheChangeOfSlope() {
    ResponseCurve curve = nitrate(Compensation.isopotential(-2, 0.1));

    assertThat(decadesOfDoubt(curve, -4, 15)).isCloseTo(0.1 * (298.15 / 288.15 - 1), within(1e-8));
  }

  @Test
  void anIdealCompensationIsDoubtedAsAWhole() {
    ResponseCurve curve = nitrate(Compensation.ideal());
    double uncompensated = -4 * 288.15 / 298.15;

    assertThat(decadesOfDoubt(curve, -4, 15))
        .isCloseTo((4 + uncompensated) / Math.sqrt(3), within(1e-8));
  }

  @Test
  void whatCannotBeIsRefused() {
    assertThatThrownBy(() -> Compensation.isopotential(Double.NaN, 0))
        .hasMessage("a compensation is made of finite numbers");
    assertThatThrownBy(() -> new Compensation(0, OptionalDouble.of(-1), 0, 0))
        .hasMessage("an uncertainty is a finite number, 0 or above");
    assertThatThrownBy(() -> Compensation.measured(-3, 1, -0.1))
        .hasMessage("an uncertainty is a finite number, 0 or above");
  }

  @Property
  void standardsAndSamplesOfAnyTemperaturesAreReadBackByTheCompensationThatIsTheirs(
      @ForAll @DoubleRange(min = -5, max = 0) double pivot,
      @ForAll @DoubleRange(min = -2, max = 2) double coefficient,
      @ForAll @DoubleRange(min = 5, max = 40) double celsius,
      @ForAll @DoubleRange(min = -5, max = -1) double sample) {
    Compensation compensation = Compensation.measured(pivot, coefficient, 0.1);
    ResponseCurve truth = nitrate(compensation);
    List<StandardPoint> points =
        List.of(
            Standards.at(1e-4, truth.millivoltsAt(1e-4, 20), 20),
            Standards.at(1e-3, truth.millivoltsAt(1e-3, 26), 26),
            Standards.at(1e-2, truth.millivoltsAt(1e-2, 23), 23));
    ResponseCurve drawn =
        new Calibrator(-1, LIMITS, new LowEnd.Straight(), compensation, 0)
            .judge(points, Optional.empty())
            .curve()
            .orElseThrow();

    double seen = truth.millivoltsAt(Math.pow(10, sample), celsius);

    assertThat(drawn.read(RestedSample.of(seen, 0.1, celsius, 0.5)).log10MolesPerLitre())
        .isCloseTo(sample, within(1e-9));
    double kelvin = Nernst.kelvin(drawn.referenceCelsius());
    assertThat(drawn.slopeMillivoltsPerDecade())
        .isCloseTo(-57 * kelvin / Nernst.kelvin(25), within(1e-9));
  }
}
