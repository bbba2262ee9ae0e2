package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Calibration.Point;
import org.restpoint.acquisition.event.Calibration.Verdict;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.acquisition.event.Result.Verification;
import org.restpoint.stability.interference.Interferent;

/** A pH electrode: buffers by their temperature, results in pH. */
class PhTest {

  /** Rounding in some twenty operations. */
  private static final double ROUNDING = 1e-9;

  private static Bench calibrated(double celsius) {
    return Bench.of(Changes.ph("phthalate", "phosphate", "borax"))
        .calibrate("phthalate", celsius)
        .calibrate("phosphate", celsius)
        .calibrate("borax", celsius);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.2, 4, 7, 7.62, 9, 12.5, 13.9})
  void aPhIsReadFromStrongAcidToStrongLye(double ph) {
    Result result = calibrated(25).measure(ph).result();
    assertThat(result.outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(result.concentration().orElseThrow().value()).isCloseTo(ph, within(ROUNDING * 14));
    assertThat(result.concentration().orElseThrow().unit()).isEqualTo("[pH]");
    assertThat(result.concentration().orElseThrow().uncertainty()).isBetween(0.005, 0.1);
  }

  @Test
  void aPhThatNoSolutionHasIsRefused() {
    assertThat(calibrated(25).measure(16.1).result().reasons().get(0).code())
        .isEqualTo("out-of-range");
    assertThat(calibrated(25).measure(-1.6).result().reasons().get(0).code())
        .isEqualTo("out-of-range");
  }

  @Test
  void aBufferCountsWithThePhOfItsTemperature() {
    Calibration calibration = calibrated(15).calibration();
    assertThat(calibration.points()).extracting(Point::value).containsExactly(3.998, 6.9, 9.276);
    assertThat(calibration.points()).extracting(Point::unit).containsOnly("[pH]");
    assertThat(calibration.slopePercent().orElseThrow()).isCloseTo(97, within(97 * ROUNDING));
    assertThat(calibration.slopeMillivoltsPerDecade().orElseThrow()).isPositive();
  }

  @Test
  void aBufferOutsideItsTableIsNoStandard() {
    Bench bench = Bench.of(Changes.ph("phthalate", "borax"));
    bench.tell("calibrate", "borax").read(3, 12, Bench.known(50.1));
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(bench.calibration().reasons().get(0).code()).isEqualTo("standard-temperature");
    assertThat(bench.calibration().reasons().get(0).text())
        .isEqualTo("standard borax: nobody says what it holds at 50.1 °C");
    bench.calibrate("borax", 50);
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.ACCEPTED);
  }

  @Test
  void aCheckInABufferOutsideItsTableIsComparedWithNothingAndSaysSo() {
    Bench bench = calibrated(25).tell("verify", "phosphate");
    bench.read(3, bench.millivolts(6.83, 51), Bench.known(51));
    assertThat(bench.result().outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(bench.result().verification()).isEmpty();
    assertThat(bench.result().flags())
        .containsExactly("standard-temperature", "temperature-differs");
  }

  private static Result verified(double found) {
    Bench bench = calibrated(25).tell("verify", "phosphate");
    return bench.read(3, bench.millivolts(found)).result();
  }

  @Test
  void aCheckWithinAFiveHundredthIsNotOff() {
    Verification check = verified(6.865).verification().orElseThrow();
    assertThat(check.expected()).hasValue(6.865);
    assertThat(check.difference().orElseThrow()).isCloseTo(0, within(1e-9));
    assertThat(check.recoveryPercent()).isEmpty();
    assertThat(check.verdict()).isEqualTo("passed");
    assertThat(verified(6.865).flags()).isEmpty();
    assertThat(verified(6.865 + 0.0499).flags()).doesNotContain("check-off");
    assertThat(verified(6.865 - 0.0499).flags()).doesNotContain("check-off");
  }

  @Test
  void aCheckPastAFiveHundredthIsOff() {
    assertThat(verified(6.865 + 0.0501).flags()).containsExactly("check-off");
    assertThat(verified(6.865 - 0.0501).flags()).containsExactly("check-off");
    assertThat(verified(7.1).verification().orElseThrow().verdict()).isEqualTo("failed");
  }

  /** A pH above the highest buffer lies above the standards, though it is less hydrogen. */
  @Test
  void belowAndAboveAreThoseOfThePh() {
    assertThat(calibrated(25).measure(9.3).result().flags()).containsExactly("above-standards");
    assertThat(calibrated(25).measure(3.9).result().flags()).containsExactly("below-standards");
  }

  private static Bench withSodium(Setup setup, double activity) {
    Interferent sodium = new Interferent("sodium", 1, 1e-12, activity, 0.5, 0);
    return Bench.of(setup.with(Changes.ions(List.of(sodium), List.of())))
        .calibrate("phthalate")
        .calibrate("borax");
  }

  /** The electrode sees pH 11.7, of which 1e-12 mol/L is sodium: left are 0.995e-12, pH 12.00. */
  @Test
  void sodiumMakesAPhReadTooLow() {
    Result result = withSodium(Changes.ph("phthalate", "borax"), 1).measure(11.7).result();
    double left = Math.pow(10, -11.7) - 1e-12;
    assertThat(result.concentration().orElseThrow().value())
        .isCloseTo(-Math.log10(left), within(1e-6));
    assertThat(result.interference().orElseThrow().get(0).bias())
        .isCloseTo(11.7 + Math.log10(left), within(1e-6));
    assertThat(result.interference().orElseThrow().get(0).biasPercent()).isEmpty();
    assertThat(result.flags()).contains("interference-large");
  }

  @Test
  void aSmallShareOfSodiumIsNotALargeCorrection() {
    assertThat(withSodium(Changes.ph("phthalate", "borax"), 0.1).measure(11.7).result().flags())
        .doesNotContain("interference-large");
  }

  @Test
  void wherePartOfAHairIsLeftOfHydrogenThereIsStillAnUncertainty() {
    Bench bench = withSodium(Changes.ph("phthalate", "borax"), 1).measure(12 - 1e-5);
    assertThat(bench.result().outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(bench.result().concentration().orElseThrow().uncertainty()).isPositive().isFinite();
  }

  @Test
  void whereSodiumExplainsAllThePhIsMoreThanTheRangeOrNothing() {
    Bench free = withSodium(Changes.ph("phthalate", "borax"), 1).measure(12.1);
    assertThat(free.result().outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(free.result().flags()).containsExactly("nothing-left");
    Setup ranged = Changes.ph("phthalate", "borax").with(Changes.range(2, 12));
    Result result = withSodium(ranged, 1).measure(12.1).result();
    assertThat(result.concentration().orElseThrow().relation()).isEqualTo(">");
    assertThat(result.concentration().orElseThrow().value()).isEqualTo(12);
    assertThat(result.interference().orElseThrow().get(0).bias()).isFinite();
  }
}
