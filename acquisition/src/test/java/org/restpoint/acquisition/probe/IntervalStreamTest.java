package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.acquisition.event.State;
import org.restpoint.config.station.Routine;

class IntervalStreamTest {

  private static final Duration MINUTE = Duration.ofMinutes(1);

  private static Setup eachMinute() {
    return Setup.nitrate()
        .giveUpAfter(Duration.ofMinutes(10))
        .routine(new Routine.EachInterval(MINUTE));
  }

  /** In the stream since 14:00:20, calibrated. */
  private static Bench inStream() {
    return Bench.of(eachMinute())
        .meanwhile(Duration.ofSeconds(1))
        .calibrate("low")
        .calibrate("high")
        .meanwhile(Duration.ofSeconds(13))
        .tell("{\"do\":\"rinsed\"}")
        .forgetWhatWasSaid();
  }

  private static Instant at(int minutes, int seconds) {
    return Bench.START.plusSeconds(60L * minutes + seconds);
  }

  @Test
  void eachIntervalGivesAResultFromItsOwnReadings() {
    Bench bench = inStream();
    bench.read(220, bench.millivolts(8));
    List<Result> results = bench.all(Result.class);
    assertThat(results).extracting(Result::time).containsExactly(at(1, 2), at(2, 2), at(3, 2));
  }

  @Test
  void aReadingAtTheVeryBeginningOfAnIntervalCounts() {
    Bench bench = inStream();
    bench.read(42, bench.millivolts(8));
    Result result = bench.result();
    assertThat(result.outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(result.readings()).isEqualTo(3);
    assertThat(result.elapsedSeconds()).isEqualTo(2);
    assertThat(result.quality()).isEqualTo(1);
  }

  @Test
  void anIntervalWithoutReadingsIsMissing() {
    Bench bench = inStream().pass(Duration.ofMinutes(3));
    List<Result> results = bench.all(Result.class);
    assertThat(results).hasSize(2);
    assertThat(results)
        .allSatisfy(
            result -> {
              assertThat(result.quality()).isEqualTo(9);
              assertThat(result.flags()).containsExactly("no-readings");
              assertThat(result.concentration()).isEmpty();
              assertThat(result.reasons().get(0).text()).isEqualTo("no reading came within 1 min");
            });
    assertThat(results).extracting(Result::id).doesNotHaveDuplicates();
  }

  @Test
  void aRestlessIntervalIsUnsettled() {
    Bench bench = inStream().restless(120);
    assertThat(bench.result().outcome()).isEqualTo(Outcome.UNSETTLED);
    assertThat(bench.result().quality()).isEqualTo(4);
    assertThat(bench.result().concentration()).isEmpty();
    assertThat(bench.result().time()).isEqualTo(at(2, 0).minusMillis(1));
  }

  @Test
  void aStreamDoesNotRepeatItsStateWithEachResult() {
    Bench bench = inStream();
    bench.read(300, bench.millivolts(8));
    assertThat(bench.all(Result.class)).hasSize(5);
    assertThat(bench.all(State.class)).isEmpty();
  }

  @Test
  void whileTheElectrodeIsOutResultsAreMissingUntilItIsRinsed() {
    Bench bench = inStream().read(1, 200).calibrate("mid");
    assertThat(bench.state().state()).isEqualTo("out of stream");
    assertThat(bench.state().nextStep())
        .isEqualTo("Rinse and blot the electrode, put it back into the stream, then: rinsed");
    bench.forgetWhatWasSaid().pass(Duration.ofMinutes(2));
    assertThat(bench.all(Result.class)).hasSize(2);
    assertThat(bench.result().quality()).isEqualTo(9);
    assertThat(bench.result().flags()).containsExactly("in-maintenance");
    assertThat(bench.result().reasons().get(0).remedy())
        .isEqualTo("When it is rinsed and back in the stream, give: rinsed");
    bench.tell("{\"do\":\"rinsed\"}");
    assertThat(bench.state().state()).isEqualTo("in stream");
    bench.read(60, bench.millivolts(8));
    assertThat(bench.result().outcome()).isEqualTo(Outcome.SETTLED);
  }

  @Test
  void anInstructionCutsTheIntervalShortAndSaysSo() {
    Bench bench = inStream().restless(50).tell("calibrate", "mid");
    assertThat(bench.result().time()).isEqualTo(bench.now());
    assertThat(bench.result().flags()).containsExactly("in-maintenance");
  }

  @Test
  void theSoakingSolutionIsNotTheStream() {
    Bench bench = inStream().restless(50).tell("{\"do\":\"soak\",\"minutes\":5}");
    assertThat(bench.result().flags()).containsExactly("in-maintenance");
    bench.forgetWhatWasSaid().read(600, bench.millivolts(8));
    assertThat(bench.all(Result.class))
        .hasSize(10)
        .allSatisfy(result -> assertThat(result.flags()).containsExactly("in-maintenance"));
    assertThat(bench.state().state()).isEqualTo("out of stream");
  }

  @Test
  void cancellingDoesNotPutTheElectrodeBack() {
    Bench bench = inStream().tell("calibrate", "mid").tell("{\"do\":\"cancel\"}");
    assertThat(bench.state().state()).isEqualTo("out of stream");
  }

  @Test
  void rinsingEndsTheRoundOfStandards() {
    Bench bench = inStream().calibrate("low").tell("{\"do\":\"rinsed\"}").calibrate("mid");
    assertThat(bench.calibration().points()).hasSize(1);
  }

  @Test
  void aRefusedRoundIsFlaggedInTheStream() {
    Bench bench = inStream().tell("calibrate", "mid").pass(Duration.ofMinutes(11));
    bench.tell("{\"do\":\"rinsed\"}").read(120, bench.millivolts(8));
    assertThat(bench.result().outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(bench.result().flags()).containsExactly("calibration-doubted");
  }

  @Test
  void anUncalibratedStreamGivesNoNumbers() {
    Bench bench = Bench.of(eachMinute());
    bench.read(70, bench.millivolts(8));
    assertThat(bench.result().outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(bench.result().flags()).containsExactly("not-calibrated");
    assertThat(bench.result().concentration()).isEmpty();
  }

  @Test
  void aStopIsToldAsAGapFromTheFirstIntervalWithoutAResult() {
    Bench bench = inStream();
    bench.read(50, bench.millivolts(8));
    Bench later = bench.restarted(eachMinute(), Duration.ofMinutes(5));
    assertThat(later.notice().code()).isEqualTo("gap");
    assertThat(later.notice().text())
        .isEqualTo(
            "no results from 2026-04-02T14:02:00Z to 2026-04-02T14:07:00Z: the service was not"
                + " running");
    later.read(60, later.millivolts(8));
    assertThat(later.result().time()).isEqualTo(at(7, 2));
  }

  @Test
  void anIntervalThatWasBeingReadWhenItStoppedBelongsToTheGap() {
    Bench bench = inStream().restless(50);
    Bench later = bench.restarted(eachMinute(), Duration.ofSeconds(5));
    assertThat(later.notice().text())
        .isEqualTo(
            "no results from 2026-04-02T14:01:00Z to 2026-04-02T14:02:00Z: the service was not"
                + " running");
  }

  @Test
  void aStopBetweenTwoIntervalsIsNoGap() {
    Bench bench = inStream();
    bench.read(50, bench.millivolts(8));
    Bench later = bench.restarted(eachMinute(), Duration.ofSeconds(30));
    assertThat(later.all(Notice.class)).isEmpty();
    later.read(60, later.millivolts(8));
    assertThat(later.result().time()).isEqualTo(at(2, 2));
  }

  @Test
  void rinsedAtTheVeryBeginningOfAnIntervalDoesNotGiveItTwice() {
    Bench bench = inStream().calibrate("mid").pass(Duration.ofSeconds(37)).forgetWhatWasSaid();
    assertThat(bench.now()).isEqualTo(at(1, 0));
    bench.tell("{\"do\":\"rinsed\"}").read(70, bench.millivolts(8));
    assertThat(bench.all(Result.class)).extracting(Result::time).containsExactly(at(2, 2));
  }
}
