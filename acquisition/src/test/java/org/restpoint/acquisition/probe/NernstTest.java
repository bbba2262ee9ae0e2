package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.chemistry.ConcentrationUnit;

class NernstTest {

  /** Rounding in some twenty operations on numbers of 1e-4 to 1e3. */
  private static final double ROUNDING = 1e-9;

  private static Bench calibrated() {
    return Bench.of(Setup.nitrate()).calibrate("low").calibrate("high");
  }

  private static double measured(Bench bench) {
    Result result = bench.result();
    assertThat(result.outcome()).isEqualTo(Outcome.SETTLED);
    return result.concentration().orElseThrow().value();
  }

  @Test
  void twoStandardsAndASampleGiveTheNernstConcentrationOfNitrate() {
    Bench bench = calibrated().measure(11.3);
    Result result = bench.result();
    assertThat(measured(bench)).isCloseTo(11.3, within(11.3 * ROUNDING));
    assertThat(result.concentration().orElseThrow().unit()).isEqualTo("mg/L");
    assertThat(result.concentration().orElseThrow().basis()).isEqualTo("as-N");
    assertThat(result.concentration().orElseThrow().coverage()).isEqualTo(2);
    assertThat(result.concentration().orElseThrow().uncertainty()).isBetween(0.1, 2.0);
    assertThat(result.calibration().orElseThrow().slopePercent())
        .isCloseTo(97, within(97 * ROUNDING));
    assertThat(result.quality()).isEqualTo(1);
    assertThat(result.flags()).isEmpty();
    assertThat(result.reported().orElseThrow().value()).isEqualTo(measured(bench));
    assertThat(result.caution()).isEqualTo(Result.CAUTION);
  }

  @Test
  void nitrateIsInMolesOfNitrogen() {
    Bench bench = calibrated();
    double moles = 14.007e-3 / 14.007;
    bench.tell("{\"do\":\"measure\"}").read(3, new Electrode(-1, 0.97).millivolts(moles, 25));
    assertThat(measured(bench)).isCloseTo(14.007, within(14.007 * ROUNDING));
  }

  @Test
  void aWarmerSampleIsReadWithTheSlopeOfItsOwnTemperature() {
    Bench bench = Bench.of(Setup.nitrate()).calibrate("low", 20).calibrate("high", 20);
    bench.measure(42, 27.5);
    assertThat(measured(bench)).isCloseTo(42, within(42 * ROUNDING));
    assertThat(bench.result().celsius().orElseThrow()).isEqualTo(27.5);
    assertThat(bench.result().calibration().orElseThrow().referenceCelsius()).isEqualTo(20);
  }

  @Test
  void standardsOfTwoTemperaturesLieOnOneLine() {
    Bench bench = Bench.of(Setup.nitrate()).calibrate("low", 18).calibrate("high", 24);
    bench.measure(8, 21);
    assertThat(measured(bench)).isCloseTo(8, within(8 * ROUNDING));
    assertThat(bench.result().calibration().orElseThrow().referenceCelsius()).isEqualTo(21);
  }

  @Test
  void ammoniumHasAPositiveSlope() {
    Bench bench =
        Bench.of(
                Setup.of("ammonium", Basis.AS_N, ConcentrationUnit.MILLIGRAMS_PER_LITRE)
                    .standard("low", 1)
                    .standard("high", 10))
            .calibrate("low", 22)
            .calibrate("high", 22)
            .measure(3.3, 17);
    assertThat(measured(bench)).isCloseTo(3.3, within(3.3 * ROUNDING));
    assertThat(bench.calibration().slopeMillivoltsPerDecade().orElseThrow()).isPositive();
  }

  @Test
  void calciumHasHalfTheSlope() {
    Bench bench =
        Bench.of(
                Setup.of("calcium", Basis.AS_ION, ConcentrationUnit.MILLIGRAMS_PER_LITRE)
                    .standard("low", 40.078)
                    .standard("high", 400.78))
            .calibrate("low")
            .calibrate("high")
            .measure(120, 30);
    assertThat(measured(bench)).isCloseTo(120, within(120 * ROUNDING));
    assertThat(bench.calibration().slopeMillivoltsPerDecade().orElseThrow())
        .isCloseTo(0.97 * 59.159 / 2, within(0.001));
  }

  @Test
  void chlorideComesInMillimolesWhereTheyAreAskedFor() {
    Bench bench =
        Bench.of(
                Setup.of("chloride", Basis.AS_ION, ConcentrationUnit.MILLIMOLES_PER_LITRE)
                    .standard("low", 0.5)
                    .standard("high", 50))
            .calibrate("low", 19)
            .calibrate("high", 19)
            .measure(2.5, 24);
    assertThat(measured(bench)).isCloseTo(2.5, within(2.5 * ROUNDING));
    assertThat(bench.result().concentration().orElseThrow().unit()).isEqualTo("mmol/L");
  }
}
