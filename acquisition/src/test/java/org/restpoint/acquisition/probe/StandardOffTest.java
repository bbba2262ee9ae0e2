package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Calibration.Point;
import org.restpoint.acquisition.event.Calibration.Verdict;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.stability.calibration.Reason;

/** A standard that reads off; nitrate reads lower in mV where there is more of it. */
class StandardOffTest {

  private static final String ACCEPT = "{\"do\":\"accept-standard\",\"because\":\"a new bottle\"}";

  private static Bench calibrated() {
    return Bench.of(Setup.nitrate()).calibrate("low").calibrate("high").measure(11);
  }

  private static List<String> codes(Calibration calibration) {
    return calibration.reasons().stream().map(Reason::code).toList();
  }

  private static List<String> causes(Bench bench) {
    return bench.calibration().causes().stream().map(Calibration.Cause::cause).toList();
  }

  private static List<String> standards(Bench bench) {
    return bench.calibration().points().stream().map(Point::standard).toList();
  }

  @Test
  void aContaminatedStandardIsRefusedWithItsCausesAndAFreshPortionPasses() {
    Bench bench = calibrated().calibrateOff("mid", -8);

    assertThat(codes(bench.calibration())).containsExactly("standard-off");
    assertThat(bench.calibration().reasons().get(0).text())
        .matches(
            "standard mid reads 8\\.0 mV lower than the calibration in force expects: .* mV instead of"
                + " .*, as 38 % more concentrated; it may move by 6\\.0 mV within a day");
    assertThat(causes(bench)).containsExactly("standard-contaminated");
    assertThat(bench.calibration().causes().get(0).evidence())
        .isEqualTo("it reads as 38 % more concentrated than it is");
    assertThat(bench.state().nextStep())
        .contains("take a fresh portion")
        .endsWith("Then: calibrate standard=mid - or go on with it as it is: accept-standard");
    assertThat(bench.remembered().round()).isEmpty();
    for (String told :
        List.of("{\"do\":\"measure\"}", "{\"do\":\"verify\",\"standard\":\"low\"}")) {
      assertThat(bench.tell(told).answer().reasons().get(0).code())
          .isEqualTo("calibration-refused");
    }
    assertThat(bench.calibrate("mid").calibration().verdict()).isEqualTo(Verdict.ACCEPTED);
    assertThat(bench.calibration().causes()).isEmpty();
    assertThat(bench.measure(11).result().flags()).isEmpty();
  }

  @Test
  void theOperatorsOverrideIsFlaggedUntilTheNextStandardPassesAlsoOverARestart() {
    Bench bench = calibrated().calibrateOff("mid", -8);
    bench = bench.restarted(Setup.nitrate(), Duration.ofMinutes(5)).tell(ACCEPT);

    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.ACCEPTED);
    assertThat(bench.calibration().flags()).containsExactly("one-point", "standard-overridden");
    assertThat(bench.answer().outcome()).contains(bench.calibration());
    assertThat(bench.notice().code()).isEqualTo("standard-overridden");
    assertThat(bench.notice().text())
        .startsWith("standard mid reads 8.0 mV lower")
        .endsWith("the operator has accepted it: a new bottle");
    bench = bench.restarted(Setup.nitrate(), Duration.ofMinutes(5)).measure(11);
    assertThat(bench.result().outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(bench.result().flags()).containsExactly("standard-overridden");
    assertThat(bench.calibrate("mid").measure(11).result().flags()).isEmpty();
  }

  @Test
  void whatWasAcceptedMayBeRightAsWell() {
    Bench bench = calibrated().calibrateOff("mid", -8).tell(ACCEPT);
    bench.measure(11).calibrateOff("high", -8).measure(11);
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.ACCEPTED);
    assertThat(bench.result().flags()).isEmpty();
  }

  @Test
  void standardsThatMoveAlikeSayThatItIsTheElectrode() {
    Bench bench = calibrated().calibrateOff("mid", -10).calibrateOff("mid", -10.4);
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(bench.calibration().causes().get(0).evidence())
        .endsWith("but a portion read just before read alike");
    bench.calibrateOff("high", -9);
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.ACCEPTED);
    assertThat(standards(bench)).containsExactly("mid", "high");
    assertThat(bench.calibration().flags()).containsExactly("offset-moved");
    assertThat(bench.calibration().remarks().get(0).text())
        .startsWith("the standards have moved alike, mid by -10.4 mV, high by -9.0 mV");
    bench.calibrate("low");
    assertThat(codes(bench.calibration())).startsWith("standard-off");
    assertThat(bench.remembered().round()).hasSize(2);
  }

  @Test
  void oneThatMovesAgainstTheOthersIsOff() {
    Bench bench = calibrated().calibrate("mid").calibrateOff("high", 7);
    assertThat(codes(bench.calibration())).contains("standard-off");
    assertThat(causes(bench)).startsWith("standard-diluted");
    assertThat(bench.remembered().round()).hasSize(1);
    bench.calibrateOff("low", 1);
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.ACCEPTED);
    assertThat(standards(bench)).containsExactly("mid", "low");
  }

  @Test
  void aNightAllowsTwiceAsMuchAndACalibrationPastItsTimeIsANewStart() {
    Bench bench = calibrated().pass(Duration.ofHours(9)).calibrateOff("mid", -10);
    assertThat(bench.calibration().flags()).containsExactly("one-point");
    bench.measure(11).pass(Duration.ofHours(9)).calibrateOff("mid", -23);
    assertThat(codes(bench.calibration())).containsExactly("standard-off");
    bench = calibrated().pass(Duration.ofHours(13)).calibrateOff("mid", -20);
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.ACCEPTED);
    assertThat(bench.calibration().flags()).containsExactly("one-point", "offset-moved");
    assertThat(bench.calibrateOff("high", -20).calibration().flags()).isEmpty();
  }

  @Test
  void aStandardThatReadsAsItNeverDidIsOffWithinTheLimitToo() {
    Bench bench = calibrated();
    double offset = 0;
    for (int i = 0; i < 8; i++) {
      offset += i % 2 == 0 ? 0.1 : 0.3;
      bench.calibrateOff("mid", offset).measure(11);
    }
    bench.calibrateOff("mid", offset + 4);
    assertThat(codes(bench.calibration())).containsExactly("standard-off");
    assertThat(bench.calibration().reasons().get(0).text())
        .endsWith("the last 8 times it moved by 0.20 mV, give or take 0.15");
    assertThat(bench.calibration().causes().get(0).evidence())
        .isEqualTo(
            "it reads as 15 % less concentrated than it is; it came to rest as usual, 3 s, usually 3 s");
  }

  @Test
  void theSolutionBeforeIsAmongTheCausesWhereItReadsTowardsIt() {
    Bench bench = calibrated().measure(200).calibrateOff("mid", -8);
    assertThat(causes(bench)).containsExactly("standard-contaminated", "rinse-missed");
    assertThat(bench.calibration().causes().get(1).evidence())
        .isEqualTo("it reads towards the solution before: 4.2 % of that in it would do");
    assertThat(causes(calibrated().measure(6).calibrateOff("mid", -8)))
        .containsExactly("standard-contaminated");
  }

  @Test
  void onAnIdealSlopeTheSameStandardIsHeldAgainstItselfAndAnotherIsNot() {
    Bench bench = Bench.of(Setup.nitrate()).calibrateOff("mid", 30).calibrate("mid");
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.ACCEPTED);
    bench.measure(11).calibrateOff("mid", 9);
    assertThat(codes(bench.calibration())).containsExactly("standard-off");
    bench.calibrate("low");
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.ACCEPTED);
  }

  @Test
  void oneThatNeverSettlesHasCausesAndNoLineToAccept() {
    Bench bench = calibrated().tell("calibrate", "low").restless(61);
    assertThat(causes(bench)).containsExactly("electrode-not-soaked", "air-bubble");
    assertThat(bench.tell(ACCEPT).answer().reasons().get(0).code()).isEqualTo("no-line");
    assertThat(bench.all(Notice.class)).extracting(Notice::code).containsExactly("no-line");
    bench.calibrate("low");
    assertThat(bench.tell(ACCEPT).answer().reasons().get(0).code()).isEqualTo("nothing-to-accept");
    assertThat(bench.all(Result.class)).hasSize(1);
  }

  @Test
  void aReplacedElectrodeIsNotHeldAgainstTheLastOne() {
    Bench bench = calibrated().tell("{\"do\":\"replaced\"}").calibrateOff("mid", -50);
    assertThat(bench.calibration().verdict()).isEqualTo(Verdict.ACCEPTED);
    assertThat(bench.calibration().flags()).containsExactly("one-point", "ideal-slope");
  }
}
