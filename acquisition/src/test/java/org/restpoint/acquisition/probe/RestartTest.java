package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.acquisition.event.State;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.calibration.StandardPoint;

class RestartTest {

  private static Bench calibrated() {
    return Bench.of(Setup.nitrate()).calibrate("low").calibrate("high");
  }

  @Test
  void aBlankProbeBeginsWithoutNotices() {
    Bench bench = Bench.of(Setup.nitrate());
    assertThat(bench.said()).hasSize(1).allMatch(State.class::isInstance);
  }

  @Test
  void aCalibrationIsInForceAgainToTheLastBit() {
    Bench bench = calibrated();
    Bench later = bench.restarted(Setup.nitrate(), Duration.ofMinutes(1));
    assertThat(later.all(Notice.class)).isEmpty();
    Result before = bench.measure(11.7, 23).result();
    Result after = later.measure(11.7, 23).result();
    assertThat(after.concentration()).isEqualTo(before.concentration());
    assertThat(after.concentration().orElseThrow().value()).isCloseTo(11.7, within(1e-6));
  }

  @Test
  void anInstructionCutShortIsTold() {
    Bench later =
        calibrated().tell("calibrate", "mid").restarted(Setup.nitrate(), Duration.ofMinutes(1));
    assertThat(later.notice().code()).isEqualTo("interrupted");
    assertThat(later.notice().text()).isEqualTo("calibrate was cut short when the service stopped");
    assertThat(later.notice().remedy()).isEqualTo("Give the instruction again.");
    assertThat(later.restarted(Setup.nitrate(), Duration.ofMinutes(1)).all(Notice.class)).isEmpty();
  }

  @Test
  void aSoakGoesOnOrIsOver() {
    Bench bench = calibrated().tell("{\"do\":\"soak\",\"minutes\":20}");
    Bench soon = bench.restarted(Setup.nitrate(), Duration.ofMinutes(5));
    assertThat(soon.state().state()).isEqualTo("soaking");
    assertThat(soon.pass(Duration.ofMinutes(15)).state().state()).isEqualTo("ready");
    Bench late = bench.restarted(Setup.nitrate(), Duration.ofMinutes(25));
    assertThat(late.all(State.class)).extracting(State::state).containsExactly("ready");
  }

  @Test
  void aStandardThatIsNoLongerTheSameLeavesTheRound() {
    Bench bench = Bench.of(Setup.nitrate()).calibrate("low").calibrate("high");
    Bench later =
        bench.restarted(Setup.nitrate().standard("low", 4).without("high"), Duration.ZERO);
    assertThat(later.remembered().round()).isEmpty();
    Bench same = bench.restarted(Setup.nitrate(), Duration.ZERO);
    assertThat(same.remembered().round())
        .extracting(StandardPoint::standard)
        .containsExactly("low", "high");
  }

  @Test
  void theCalibrationOfAnotherIonIsDropped() {
    Bench later =
        calibrated().restarted(Setup.nitrate().analyte("ammonium"), Duration.ofMinutes(1));
    assertThat(later.notice().code()).isEqualTo("calibration-dropped");
    assertThat(later.notice().text())
        .isEqualTo("the calibrations kept are for nitrate, and the probe is now set to ammonium");
    assertThat(later.tell("{\"do\":\"measure\"}").result().outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(later.state().nextStep()).contains("calibrate standard=low");
    Bench again = later.restarted(Setup.nitrate().analyte("ammonium"), Duration.ofMinutes(1));
    assertThat(again.all(Notice.class)).isEmpty();
  }

  @Test
  void aStreamMadeABenchProbeIsNotOutOfItsStream() {
    Setup stream = Setup.nitrate().routine(new Routine.EachRest(Duration.ofMinutes(5)));
    Bench bench = Bench.of(stream).calibrate("low").calibrate("high");
    assertThat(bench.state().state()).isEqualTo("out of stream");
    assertThat(bench.restarted(Setup.nitrate(), Duration.ofMinutes(1)).state().state())
        .isEqualTo("ready");
  }

  @Test
  void noticesInOneMillisecondKeepTheirOwnIdsOverARestart() {
    Bench bench = Bench.of(Setup.nitrate()).tell("calibrate", "x");
    Bench later = bench.restarted(Setup.nitrate(), Duration.ZERO).tell("calibrate", "x");
    assertThat(bench.notice().id()).isEqualTo("no3-a-20260402T140000.000Z-notice");
    assertThat(later.notice().id()).isEqualTo("no3-a-20260402T140000.000Z-notice-2");
  }

  @Test
  void aClockPutBackIsToldAndWhatWasReadBeginsAgain() {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}").restless(10).forgetWhatWasSaid();
    bench.meanwhile(Duration.ofHours(-1)).read(3, bench.millivolts(11));
    assertThat(bench.notice().code()).isEqualTo("clock-put-back");
    assertThat(bench.notice().text())
        .isEqualTo(
            "the clock went back from 2026-04-02T14:00:16Z to 2026-04-02T13:00:17Z; what was being"
                + " read begins again");
    assertThat(bench.all(Result.class)).isEmpty();
    bench.read(1, bench.millivolts(11));
    assertThat(bench.result().outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(bench.result().elapsedSeconds()).isEqualTo(3);
    assertThat(bench.result().flags()).containsExactly("calibration-old");
    assertThat(bench.result().calibration().orElseThrow().ageSeconds()).isZero();
  }

  @Test
  void aClockPutBackDoesNotStopTheWaitFromBeingGivenUp() {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}").restless(10);
    bench.meanwhile(Duration.ofDays(-400)).restless(62);
    assertThat(bench.result().outcome()).isEqualTo(Outcome.UNSETTLED);
    assertThat(bench.result().elapsedSeconds()).isEqualTo(60);
  }

  @Test
  void aClockPutBackLeavesASoakAsLongAsItWas() {
    Bench bench = calibrated().tell("{\"do\":\"soak\",\"minutes\":20}").pass(Duration.ofMinutes(5));
    bench.meanwhile(Duration.ofHours(-3)).read(1, 200);
    assertThat(bench.state().nextStep()).contains("until 2026-04-02T11:20:07Z");
    assertThat(bench.pass(Duration.ofMinutes(15)).state().state()).isEqualTo("ready");
  }

  @Test
  void lettingAnEarlierTimePassChangesNothing() {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}").restless(10).forgetWhatWasSaid();
    bench.pass(Duration.ofHours(-1)).meanwhile(Duration.ofHours(1)).read(3, bench.millivolts(11));
    assertThat(bench.all(Notice.class)).isEmpty();
    assertThat(bench.result().readings()).isEqualTo(13);
  }

  @Test
  void aClockPutBackOverARestartIsToldAndIdsStayTheirOwn() {
    Bench bench = calibrated().measure(11);
    Bench later = bench.restarted(Setup.nitrate(), Duration.ofHours(-1));
    assertThat(later.notice().code()).isEqualTo("clock-put-back");
    later.measure(11);
    assertThat(later.result().id()).isEqualTo(bench.result().id() + "-2");
  }

  @Test
  void aStreamGoesOnAfterTheClockIsPutBack() {
    Setup stream = Setup.nitrate().routine(new Routine.EachInterval(Duration.ofMinutes(1)));
    Bench bench = Bench.of(stream).restless(90).meanwhile(Duration.ofDays(-400));
    bench.forgetWhatWasSaid().restless(200);
    assertThat(bench.all(Notice.class)).hasSize(1);
    assertThat(bench.all(Result.class)).hasSize(2);
    List<String> ids = bench.all(Result.class).stream().map(Result::id).toList();
    assertThat(ids).doesNotHaveDuplicates();
  }

  @Test
  void readingsALittleOutOfOrderChangeNothing() {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}").restless(5);
    bench
        .readAfterMillis(500, bench.millivolts(11))
        .readAfterMillis(-40, bench.millivolts(11))
        .readAfterMillis(20, bench.millivolts(11));
    assertThat(bench.result().outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(bench.all(Notice.class)).isEmpty();
  }
}
