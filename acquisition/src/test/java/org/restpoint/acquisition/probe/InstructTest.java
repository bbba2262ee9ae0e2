package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Answer.Verdict;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.acquisition.event.Result.Verification;
import org.restpoint.acquisition.event.State;
import org.restpoint.stability.calibration.Reason;

class InstructTest {

  private static final String MEASURE = "{\"id\":\"7\",\"do\":\"measure\",\"sample\":\"S-12\"}";

  private static Bench calibrated() {
    return Bench.of(Setup.nitrate()).calibrate("low").calibrate("high");
  }

  private static void assertNotice(Bench bench, Reason reason) {
    Notice notice = bench.notice();
    assertThat(new Reason(notice.code(), notice.text(), notice.remedy())).isEqualTo(reason);
    assertThat(bench.answer().verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(bench.answer().reasons()).containsExactly(reason);
  }

  @Test
  void aMeasureBeforeAnyCalibrationIsRefused() {
    Bench bench = Bench.of(Setup.nitrate()).tell(MEASURE);
    Reason reason =
        new Reason(
            "not-calibrated",
            "no calibration is in force",
            "Read the standards first: calibrate, once for each standard.");
    Result result = bench.result();
    assertThat(result.outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(result.reasons()).containsExactly(reason);
    assertThat(result.quality()).isEqualTo(4);
    assertThat(result.concentration()).isEmpty();
    assertThat(result.sample().orElseThrow().get("number").textValue()).isEqualTo("S-12");
    assertThat(bench.answer().id()).contains("7");
    assertThat(bench.answer().verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(bench.answer().reasons()).containsExactly(reason);
    assertThat(bench.answer().outcome()).isEqualTo(Optional.of(result));
  }

  @Test
  void anUndefinedStandardIsRefusedWithThoseThereAre() {
    Bench bench = Bench.of(Setup.nitrate()).tell("calibrate", "medium");
    assertNotice(
        bench,
        new Reason(
            "standard-unknown",
            "standard medium is not one of this probe's standards: low, mid, high",
            "Name one of them, or define it in the station file and list it under calibrate."));
    assertThat(calibrated().tell("verify", "medium").notice().code()).isEqualTo("standard-unknown");
  }

  @Test
  void aStandardServesOnItsLastDayAndIsRefusedTheDayAfter() {
    Bench bench = Bench.of(Setup.nitrate().expiring("low", "2026-04-02"));
    assertThat(bench.tell("calibrate", "low").answer().verdict()).isEqualTo(Verdict.ACCEPTED);
    bench.tell("{\"do\":\"cancel\"}").pass(Duration.ofHours(10)).tell("calibrate", "low");
    assertNotice(
        bench,
        new Reason(
            "standard-expired",
            "standard low expired on 2026-04-02",
            "Take a fresh lot and write its lot and expiry into the station file."));
  }

  @Test
  void aProbeDoesOneThingAtATime() {
    Bench bench = calibrated().tell("calibrate", "mid").tell("calibrate", "low");
    Reason busy =
        new Reason(
            "busy",
            "the probe is still carrying out calibrate",
            "Wait until it is done, or cancel it.");
    assertNotice(bench, busy);
    bench.tell(MEASURE);
    assertThat(bench.result().outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(bench.result().reasons()).containsExactly(busy);
    assertThat(bench.tell("{\"do\":\"soak\"}").answer().reasons()).containsExactly(busy);
    bench.read(3, bench.millivolts(20));
    assertThat(bench.calibration().points()).hasSize(3);
  }

  @Test
  void anInstructionIsAnsweredWhenItBeginsAndWhenItEnds() {
    Bench bench = calibrated().forgetWhatWasSaid().tell(MEASURE);
    assertThat(bench.answer().verdict()).isEqualTo(Verdict.ACCEPTED);
    assertThat(bench.state().state()).isEqualTo("reading sample");
    bench.read(3, bench.millivolts(11));
    List<Answer> answers = bench.all(Answer.class);
    assertThat(answers).extracting(Answer::verdict).containsExactly(Verdict.ACCEPTED, Verdict.DONE);
    assertThat(answers).extracting(Answer::id).containsOnly(Optional.of("7"));
    assertThat(answers).extracting(Answer::instruction).containsOnly("measure");
    assertThat(answers.get(1).outcome()).isEqualTo(Optional.of(bench.result()));
    assertThat(bench.state().state()).isEqualTo("ready");
  }

  @Test
  void aCancelledReadingLeavesNoResultAndBothCallersHear() {
    Bench bench = calibrated().tell(MEASURE).read(2, 200).forgetWhatWasSaid();
    bench.tell("{\"id\":\"8\",\"do\":\"cancel\"}");
    List<Answer> answers = bench.all(Answer.class);
    assertThat(answers)
        .extracting(answer -> answer.id().orElseThrow())
        .containsExactly("8", "7", "8");
    assertThat(answers)
        .extracting(Answer::verdict)
        .containsExactly(Verdict.ACCEPTED, Verdict.REFUSED, Verdict.DONE);
    assertThat(answers.get(1).reasons())
        .containsExactly(new Reason("cancelled", "it was cancelled", ""));
    bench.read(10, 200).pass(Duration.ofMinutes(5));
    assertThat(bench.all(Result.class)).isEmpty();
    assertThat(bench.measure(11).result().outcome()).isEqualTo(Outcome.SETTLED);
  }

  @Test
  void withNothingGoingOnThereIsNothingToCancel() {
    assertNotice(
        calibrated().tell("{\"do\":\"cancel\"}"),
        new Reason("nothing-to-cancel", "nothing is going on that could be cancelled", ""));
  }

  @Test
  void soakingEndsByItself() {
    Bench bench = calibrated().tell("{\"do\":\"soak\",\"minutes\":20}");
    assertThat(bench.answer().verdict()).isEqualTo(Verdict.DONE);
    assertThat(bench.state().state()).isEqualTo("soaking");
    assertThat(bench.state().nextStep())
        .isEqualTo(
            "Leave the electrode in its soaking solution until 2026-04-02T14:20:06Z: 20 min left.");
    bench.pass(Duration.ofMinutes(20).minusMillis(1));
    assertThat(bench.state().state()).isEqualTo("soaking");
    bench.pass(Duration.ofHours(1));
    assertThat(bench.state().state()).isEqualTo("ready");
    assertThat(bench.state().time()).isEqualTo(Bench.START.plusSeconds(6).plusSeconds(1200));
  }

  @Test
  void soakingCanBeCancelledOrCutShortByAReading() {
    Bench bench = calibrated().tell("{\"do\":\"soak\"}").tell("{\"do\":\"cancel\"}");
    assertThat(bench.state().state()).isEqualTo("ready");
    bench.tell("{\"do\":\"soak\"}").measure(11);
    assertThat(bench.result().outcome()).isEqualTo(Outcome.SETTLED);
    int states = bench.all(State.class).size();
    bench.pass(Duration.ofHours(1));
    assertThat(bench.all(State.class)).hasSize(states);
  }

  @Test
  void soakingEndsTheRoundOfStandards() {
    Bench bench = calibrated().tell("{\"do\":\"soak\"}").calibrate("mid");
    assertThat(bench.calibration().points()).hasSize(1);
  }

  private static Result verified(double found) {
    Bench bench = calibrated().tell("verify", "mid");
    assertThat(bench.state().state()).isEqualTo("verifying");
    return bench.read(3, bench.millivolts(found)).result();
  }

  @Test
  void aCheckStandardThatIsFoundAgainPasses() {
    Result result = verified(19);
    Verification check = result.verification().orElseThrow();
    assertThat(check.role()).isEqualTo(CheckRole.CHECK_STANDARD);
    assertThat(check.standard()).contains("mid");
    assertThat(check.expected().orElseThrow()).isCloseTo(20, within(1e-9));
    assertThat(check.recoveryPercent().orElseThrow()).isCloseTo(95, within(1e-6));
    assertThat(check.difference().orElseThrow()).isCloseTo(-1, within(1e-6));
    assertThat(check.verdict()).isEqualTo("passed");
    assertThat(result.flags()).isEmpty();
    assertThat(result.quality()).isEqualTo(1);
    assertThat(result.sample()).isEmpty();
  }

  @Test
  void aCheckStandardOffByMoreThanTenPercentIsFlagged() {
    assertThat(verified(17.9).flags()).containsExactly("check-off");
    assertThat(verified(22.1).flags()).containsExactly("check-off");
    assertThat(verified(22.1).quality()).isEqualTo(3);
    assertThat(verified(22.1).concentration()).isPresent();
  }

  @Test
  void aCheckStandardWhoseUncertaintyReachesOverALimitIsNotSaidToPass() {
    assertThat(verified(18).flags()).containsExactly("check-uncertain");
    assertThat(verified(22).flags()).containsExactly("check-uncertain");
    assertThat(verified(22).verification().orElseThrow().verdict()).isEqualTo("uncertain");
    assertThat(verified(22.1).verification().orElseThrow().verdict()).isEqualTo("uncertain");
    assertThat(verified(30).verification().orElseThrow().verdict()).isEqualTo("failed");
    assertThat(verified(21).flags()).isEmpty();
  }

  @Test
  void aCheckLeavesTheCalibrationAloneAndIsNoSample() {
    Bench bench = calibrated();
    Calibration before = bench.calibration();
    bench.tell("verify", "mid").read(3, bench.millivolts(30)).measure(11);
    assertThat(bench.calibration()).isEqualTo(before);
    assertThat(bench.result().calibration().orElseThrow().id()).isEqualTo(before.id());
    assertThat(bench.remembered().samplesSinceStandard()).isEqualTo(1);
  }

  @Test
  void aCheckNeedsACalibration() {
    assertThat(Bench.of(Setup.nitrate()).tell("verify", "mid").notice().text())
        .isEqualTo("no calibration is in force");
  }
}
