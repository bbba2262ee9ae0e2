package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Interference;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.stability.interference.Interferent;

/** Other ions in the sample, and salt. */
class MatrixTest {

  /** 1 mg/L of nitrate as N, mol/L. */
  private static final double ONE = 1 / 14007.0;

  /** Rounding in some twenty operations. */
  private static final double ROUNDING = 1e-9;

  private static Interferent chloride(double molesPerLitre) {
    return new Interferent("chloride", -1, 0.005, molesPerLitre, 0.3, 0);
  }

  private static Interferent nitrite(double molesPerLitre) {
    return Interferent.exactly("nitrite", -1, 0.06, molesPerLitre);
  }

  private static Bench with(List<Interferent> known, List<Interferent> atMost) {
    return calibrated(Setup.nitrate().with(Changes.ions(known, atMost)));
  }

  private static Bench calibrated(Setup setup) {
    return Bench.of(setup).calibrate("low").calibrate("high");
  }

  private static double value(Result result) {
    return result.concentration().orElseThrow().value();
  }

  @Test
  void aKnownIonIsTakenOff() {
    Result result = with(List.of(chloride(200 * ONE)), List.of()).measure(10).result();
    assertThat(value(result)).isCloseTo(9, within(9 * ROUNDING));
    Interference told = result.interference().orElseThrow().get(0);
    assertThat(told.ion()).isEqualTo("chloride");
    assertThat(told.bias()).isCloseTo(1, within(ROUNDING));
    assertThat(told.biasPercent().orElseThrow()).isCloseTo(100 / 9.0, within(1e-6));
    assertThat(told.corrected()).isTrue();
    assertThat(result.flags()).isEmpty();
    assertThat(result.budget().orElseThrow())
        .filteredOn(line -> line.source().equals("interfering ions"))
        .singleElement()
        .satisfies(line -> assertThat(line.contribution()).isCloseTo(0.3, within(1e-6)));
  }

  @Test
  void anIonOfWhichOnlyALimitIsKnownIsToldAndNotTakenOff() {
    Result result = with(List.of(), List.of(nitrite(50 * ONE))).measure(10).result();
    assertThat(value(result)).isCloseTo(10, within(10 * ROUNDING));
    Interference told = result.interference().orElseThrow().get(0);
    assertThat(told.bias()).isCloseTo(3, within(3 * ROUNDING));
    assertThat(told.corrected()).isFalse();
    assertThat(result.flags()).containsExactly("interference");
    assertThat(result.quality()).isEqualTo(3);
  }

  @Test
  void whatCouldDoLessThanTheUncertaintyIsNotFlagged() {
    Result result = with(List.of(), List.of(nitrite(0.1 * ONE))).measure(10).result();
    assertThat(result.interference().orElseThrow().get(0).bias())
        .isLessThan(result.concentration().orElseThrow().uncertainty());
    assertThat(result.flags()).isEmpty();
  }

  @Test
  void limitsAreAddedUpBeforeTheyAreCompared() {
    double uncertainty =
        with(List.of(), List.of()).measure(10).result().concentration().orElseThrow().uncertainty();
    double level = 0.6 * uncertainty / 0.06 * ONE;
    Interferent nitrite = nitrite(level);
    Interferent bromide = Interferent.exactly("bromide", -1, 0.06, level);
    assertThat(with(List.of(), List.of(nitrite)).measure(10).result().flags()).isEmpty();
    assertThat(with(List.of(), List.of(bromide)).measure(10).result().flags()).isEmpty();
    assertThat(with(List.of(), List.of(nitrite, bromide)).measure(10).result().flags())
        .containsExactly("interference");
  }

  @Test
  void aCorrectionOfMoreThanHalfOfWhatIsLeftIsFlagged() {
    assertThat(with(List.of(chloride(1000 * ONE)), List.of()).measure(15.1).result().flags())
        .isEmpty();
    assertThat(with(List.of(chloride(1000 * ONE)), List.of()).measure(14.9).result().flags())
        .containsExactly("interference-large");
  }

  @Test
  void whereTheIonsExplainAllNoNumberIsGiven() {
    Result result = with(List.of(chloride(2000 * ONE)), List.of()).measure(9.9).result();
    assertThat(result.outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(result.concentration()).isEmpty();
    assertThat(result.flags()).containsExactly("nothing-left");
    assertThat(result.reasons().get(0).text())
        .isEqualTo(
            "the interfering ions named in the station file explain all of the potential; nothing"
                + " is left of the ion");
  }

  @Test
  void withARangeItIsThenLessThanItsLowerEnd() {
    Setup setup =
        Setup.nitrate()
            .with(Changes.ions(List.of(chloride(2000 * ONE)), List.of()))
            .with(Changes.range(1, 100));
    Result result = calibrated(setup).measure(9.9).result();
    assertThat(result.concentration().orElseThrow().relation()).isEqualTo("<");
    assertThat(value(result)).isEqualTo(1);
    assertThat(result.flags()).contains("below-range", "interference-large");
    assertThat(result.interference().orElseThrow().get(0).bias()).isCloseTo(10, within(1e-6));
  }

  /**
   * γ by C. W. Davies (Ion Association, 1962) with A = 0.5085 at 25 °C, of standards by their own
   * salt: what the electrode sees is γ·c.
   */
  private static double gamma(double ionicStrength) {
    double root = Math.sqrt(ionicStrength);
    return Math.pow(10, -0.5085 * (root / (1 + root) - 0.3 * ionicStrength));
  }

  private static Bench saltyStandards(double ionicStrength) {
    Bench bench = Bench.of(Setup.nitrate().with(Changes.salty(ionicStrength)));
    for (double standard : new double[] {5, 100}) {
      String name = standard == 5 ? "low" : "high";
      bench.tell("calibrate", name).read(3, bench.millivolts(standard * gamma(standard * ONE)));
    }
    return bench;
  }

  @Test
  void theActivityCoefficientsOfSampleAndStandardsAreCorrected() {
    Bench bench = saltyStandards(0.02);
    assertThat(bench.calibration().slopePercent().orElseThrow()).isCloseTo(97, within(1e-6));
    Result result = bench.measure(20 * gamma(0.02)).result();
    assertThat(value(result)).isCloseTo(20, within(1e-6));
    assertThat(result.flags()).isEmpty();
    assertThat(result.budget().orElseThrow())
        .filteredOn(line -> line.source().equals("activity coefficient"))
        .singleElement()
        .satisfies(
            line -> assertThat(line.estimate().orElseThrow()).isCloseTo(gamma(0.02), within(1e-9)));
  }

  @Test
  void anIonicStrengthBeyondTheModelIsFlagged() {
    assertThat(saltyStandards(0.5).measure(20).result().flags()).doesNotContain("activity-beyond");
    assertThat(saltyStandards(0.51).measure(20).result().flags()).contains("activity-beyond");
  }

  @Test
  void soIsATemperatureBeyondItEvenWhereWaterEnds() {
    assertThat(saltyStandards(0.02).measure(20, 60).result().flags())
        .doesNotContain("activity-beyond");
    assertThat(saltyStandards(0.02).measure(20, 60.5).result().flags()).contains("activity-beyond");
    assertThat(saltyStandards(0.02).measure(20, 105).result().flags()).contains("activity-beyond");
  }

  @Test
  void anAbsurdlyStrongStandardDoesNotStopTheService() {
    Setup setup = Setup.nitrate().standard("brine", 900_000).with(Changes.salty(0.02));
    Bench bench = Bench.of(setup).tell("calibrate", "brine").read(3, -80);
    assertThat(bench.calibration().points()).hasSize(1);
  }
}
