package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Calibration.Point;
import org.restpoint.acquisition.event.Calibration.Verdict;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.config.station.Calibrate.Every;
import org.restpoint.stability.calibration.Reason;

class CalibrateTest {

  private static Bench calibrated() {
    return Bench.of(Setup.nitrate()).calibrate("low").calibrate("high");
  }

  private static List<String> standards(Bench bench) {
    return bench.calibration().points().stream().map(Point::standard).toList();
  }

  @Test
  void oneStandardWithNothingBeforeStandsOnTheIdealSlopeAndSaysSo() {
    Calibration first = Bench.of(Setup.nitrate()).calibrate("mid").calibration();
    assertThat(first.verdict()).isEqualTo(Verdict.ACCEPTED);
    assertThat(first.slopeFrom()).hasValue("ideal");
    assertThat(first.slopePercent().orElseThrow()).isCloseTo(100, within(1e-9));
    assertThat(first.flags()).containsExactly("one-point", "ideal-slope");
  }

  @Test
  void theIdealSlopeStaysFlaggedHoweverOftenOneStandardIsReadAgain() {
    Bench bench = Bench.of(Setup.nitrate()).calibrate("mid").measure(20).calibrate("mid");
    assertThat(bench.calibration().slopeFrom()).hasValue("ideal");
    assertThat(bench.calibration().flags()).containsExactly("one-point", "ideal-slope");
    assertThat(bench.measure(20).result().flags()).containsExactly("ideal-slope");
    assertThat(bench.result().quality()).isEqualTo(3);
    bench = bench.restarted(Setup.nitrate(), Duration.ofMinutes(1)).calibrate("mid").measure(20);
    assertThat(bench.result().flags()).containsExactly("ideal-slope");
  }

  @Test
  void oneStandardAfterALineKeepsItsSlopeAndItsRange() {
    Bench bench = calibrated().measure(11).calibrateOff("mid", 2.5);
    assertThat(bench.calibration().slopeFrom()).hasValue("last accepted");
    assertThat(bench.calibration().slopePercent().orElseThrow()).isCloseTo(97, within(1e-9));
    assertThat(bench.calibration().flags()).containsExactly("one-point");
    bench.tell("{\"do\":\"measure\"}").read(3, 2.5 + bench.millivolts(120));
    assertThat(bench.result().concentration().orElseThrow().value()).isCloseTo(120, within(1e-6));
    assertThat(bench.result().flags()).containsExactly("above-standards");
  }

  @Test
  void aStandardThatIsNeverReadSaysNothingOfASlope() {
    Bench bench = Bench.of(Setup.nitrate()).tell("{\"do\":\"calibrate\",\"standard\":\"mid\"}");
    bench.pass(Duration.ofHours(1));
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(bench.calibration().slopeFrom()).isEmpty();
    assertThat(bench.calibration().slopePercent()).isEmpty();
  }

  @Test
  void threeStandardsTellTheirScatter() {
    Bench bench = calibrated().calibrateOff("mid", 1);
    assertThat(standards(bench)).containsExactly("low", "high", "mid");
    assertThat(bench.calibration().residualMillivolts().orElseThrow()).isBetween(0.5, 1.5);
    assertThat(bench.calibration().points())
        .allSatisfy(point -> assertThat(point.residualMillivolts()).isPresent());
    assertThat(bench.calibration().slopeStandardError().orElseThrow()).isPositive();
  }

  @Test
  void aStandardReadAgainInItsRoundReplacesItself() {
    Bench bench = Bench.of(Setup.nitrate()).calibrate("low").calibrateOff("high", 40);
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.REFUSED);
    bench.calibrate("high");
    assertThat(standards(bench)).containsExactly("low", "high");
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.ACCEPTED);
    assertThat(bench.calibration().slopePercent().orElseThrow()).isCloseTo(97, within(1e-9));
  }

  @Test
  void aSampleEndsTheRound() {
    Bench bench = calibrated().measure(11).calibrate("mid");
    assertThat(standards(bench)).containsExactly("mid");
  }

  @Test
  void aStandardOlderThanACalibrationIsValidForLeavesTheRound() {
    Bench bench = Bench.of(Setup.nitrate()).calibrate("low").calibrate("mid");
    bench.pass(Duration.ofHours(12).minusSeconds(5)).calibrate("high");
    assertThat(standards(bench)).containsExactly("mid", "high");
  }

  @Test
  void aRefusedRoundKeepsTheOldCalibrationButReadsNoSample() {
    Bench bench = calibrated().measure(11).calibrate("low");
    String old = bench.calibration().id();
    bench.calibrateOff("high", 40);
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(bench.calibration().reasons())
        .extracting(Reason::code)
        .containsExactly("standard-off", "slope-low");
    assertThat(bench.remembered().inForce().orElseThrow().id()).isEqualTo(old);
    bench.tell("{\"do\":\"measure\"}");
    assertThat(bench.result().outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(bench.result().reasons().get(0).code()).isEqualTo("calibration-refused");
    assertThat(bench.result().reasons().get(0).text())
        .startsWith("the last standard was refused: standard high reads 40.0 mV higher than");
    bench.calibrate("high").measure(11);
    assertThat(bench.result().outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(bench.result().concentration().orElseThrow().value()).isCloseTo(11, within(1e-6));
  }

  @Test
  void aStandardThatDoesNotSettleLeavesTheCalibrationBeforeItInForce() {
    Bench bench = calibrated();
    String old = bench.calibration().id();
    bench.measure(11).tell("calibrate", "low").restless(61);
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(bench.remembered().inForce().orElseThrow().id()).isEqualTo(old);
    assertThat(
            bench.restarted(Setup.nitrate(), Duration.ZERO).tell("{\"do\":\"measure\"}").result())
        .satisfies(
            result -> assertThat(result.reasons().get(0).code()).isEqualTo("calibration-refused"));
  }

  @Test
  void aStandardThatDoesNotSettleIsNamedAndAskedForAgain() {
    Bench bench = Bench.of(Setup.nitrate()).calibrate("low");
    bench.tell("calibrate", "mid").restless(61);
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(bench.calibration().slopeMillivoltsPerDecade()).isEmpty();
    assertThat(bench.calibration().reasons().get(0).text())
        .startsWith("standard mid: not at rest within 1 min");
    assertThat(bench.state().nextStep()).endsWith("then read again. Then: calibrate standard=mid");
    assertThat(bench.restarted(Setup.nitrate(), Duration.ZERO).state().nextStep())
        .endsWith("Then: calibrate standard=mid");
  }

  @Test
  void aStandardWithoutTemperatureIsRefused() {
    Bench bench = Bench.of(Setup.nitrate()).tell("calibrate", "low");
    bench.read(3, 300, new Temperature.Missing("the thermometer is mute", "Plug it in."));
    assertThat(bench.calibration().reasons().get(0).text())
        .isEqualTo("standard low: the thermometer is mute");
    assertThat(bench.remembered().inForce()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {-273.15, -127, 850})
  void aBrokenThermometerDoesNotCalibrate(double celsius) {
    Bench bench = Bench.of(Setup.nitrate()).tell("calibrate", "low");
    bench.read(3, 300, Bench.known(celsius));
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(bench.calibration().reasons().get(0).code()).isEqualTo("no-temperature");
  }

  @Test
  void aPotentialThatNoElectrodeGivesDoesNotCalibrate() {
    Bench bench = Bench.of(Setup.nitrate()).tell("calibrate", "low").read(3, 1e308);
    assertThat(bench.calibration().reasons().get(0).text())
        .isEqualTo("standard low: 1000000 mV is beyond what any electrode gives");
    bench.tell("calibrate", "high").read(3, -1e308);
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(bench.remembered().round()).isEmpty();
  }

  @Test
  void everySampleAsksForAStandardBeforeTheNext() {
    Bench bench =
        Bench.of(Setup.nitrate().restandardize("mid", new Every.Samples(1)))
            .calibrate("low")
            .calibrate("high")
            .measure(11);
    assertThat(bench.result().flags()).isEmpty();
    assertThat(bench.state().nextStep())
        .isEqualTo(
            "A standard is due: rinse and blot (never wipe), put the electrode into standard mid,"
                + " then: calibrate standard=mid");
    assertThat(bench.measure(11).result().flags()).containsExactly("standard-due");
    assertThat(bench.calibrate("mid").measure(11).result().flags()).isEmpty();
  }

  @Test
  void aStandardIsDueAfterSoManySamples() {
    Bench bench =
        Bench.of(Setup.nitrate().restandardize("mid", new Every.Samples(3)))
            .calibrate("low")
            .calibrate("high");
    for (int i = 0; i < 3; i++) {
      assertThat(bench.measure(11).result().flags()).isEmpty();
    }
    assertThat(bench.measure(11).result().flags()).containsExactly("standard-due");
  }

  @Test
  void aStandardIsDueAfterSoLong() {
    Bench bench =
        Bench.of(Setup.nitrate().restandardize("mid", new Every.Span(Duration.ofHours(2))))
            .calibrate("low")
            .calibrate("high");
    bench.pass(Duration.ofHours(2).minusSeconds(3)).measure(11);
    assertThat(bench.result().flags()).isEmpty();
    assertThat(bench.measure(11).result().flags()).containsExactly("standard-due");
  }

  @Test
  void aCalibrationPastItsTimeIsFlagged() {
    Bench bench = calibrated();
    bench.pass(Duration.ofHours(12).minusSeconds(3)).measure(11);
    assertThat(bench.result().flags()).isEmpty();
    assertThat(bench.result().calibration().orElseThrow().ageSeconds()).isEqualTo(12 * 3600);
    assertThat(bench.measure(11).result().flags()).containsExactly("calibration-old");
  }

  @Test
  void theNextStepLeadsThroughTheStandards() {
    Bench bench = Bench.of(Setup.nitrate());
    assertThat(bench.state().state()).isEqualTo("needs calibration");
    assertThat(bench.state().nextStep())
        .isEqualTo(
            "Rinse and blot the electrode, put it into standard low, then: calibrate standard=low");
    bench.tell("calibrate", "low");
    assertThat(bench.state().state()).isEqualTo("reading standard");
    assertThat(bench.state().nextStep())
        .isEqualTo(
            "Leave the electrode still in standard low until it is at rest; it is given up after 1"
                + " min.");
    bench.tell("{\"do\":\"cancel\"}").calibrate("low");
    assertThat(bench.state().nextStep())
        .isEqualTo(
            "Rinse and blot (never wipe), put the electrode into standard mid, then: calibrate"
                + " standard=mid - or go on: put the electrode into the sample, then: measure");
    bench.calibrate("mid");
    assertThat(bench.state().nextStep()).contains("calibrate standard=high - or go on");
    bench.calibrate("high");
    assertThat(bench.state().nextStep())
        .isEqualTo("Rinse and blot (never wipe), put the electrode into the sample, then: measure");
  }
}
