package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.config.station.Routine;

class RestStreamTest {

  private static Setup atRest() {
    return Setup.nitrate().routine(new Routine.EachRest(Duration.ofMinutes(5)));
  }

  private static Bench inStream() {
    return Bench.of(atRest())
        .calibrate("low")
        .calibrate("high")
        .tell("{\"do\":\"rinsed\"}")
        .forgetWhatWasSaid();
  }

  @Test
  void aPotentialThatStaysAtRestGivesOneResult() {
    Bench bench = inStream();
    bench.read(500, bench.millivolts(8));
    assertThat(bench.all(Result.class)).hasSize(1);
    assertThat(bench.result().outcome()).isEqualTo(Outcome.SETTLED);
  }

  @Test
  void itGivesAnotherOnceItHasLeftItsRest() {
    Bench bench = inStream();
    bench.read(20, bench.millivolts(8)).read(20, bench.millivolts(9));
    assertThat(bench.all(Result.class)).hasSize(2);
    assertThat(bench.result().concentration().orElseThrow().value()).isBetween(8.999999, 9.000001);
    assertThat(bench.result().readings()).isEqualTo(3);
  }

  @Test
  void aSpikeOfTwoReadingsIsNotLeavingRest() {
    Bench bench = inStream();
    for (int i = 0; i < 10; i++) {
      bench.read(20, bench.millivolts(8)).read(2, bench.millivolts(50));
    }
    bench.read(20, bench.millivolts(8));
    assertThat(bench.all(Result.class)).hasSize(1);
  }

  @Test
  void aWaitThatIsGivenUpIsFollowedByTheNext() {
    Bench bench = inStream().restless(130);
    assertThat(bench.all(Result.class))
        .hasSize(2)
        .allSatisfy(result -> assertThat(result.outcome()).isEqualTo(Outcome.UNSETTLED));
  }

  @Test
  void silenceIsToldAsAGapOnce() {
    Bench bench = inStream();
    bench.read(20, bench.millivolts(8)).forgetWhatWasSaid();
    bench.pass(Duration.ofMinutes(5));
    assertThat(bench.all(Result.class)).isEmpty();
    bench.pass(Duration.ofHours(5));
    assertThat(bench.all(Result.class)).hasSize(1);
    assertThat(bench.result().quality()).isEqualTo(9);
    assertThat(bench.result().flags()).containsExactly("no-readings");
    assertThat(bench.result().reasons().get(0).text()).isEqualTo("no reading has come for 5 min");
    bench.read(20, bench.millivolts(8));
    assertThat(bench.result().outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(bench.pass(Duration.ofHours(5)).all(Result.class)).hasSize(3);
  }

  @Test
  void readingsExactlyAsFarApartAsAGapMayBeAreNoGap() {
    Bench bench = inStream();
    for (int i = 0; i < 10; i++) {
      bench.readAfterMillis(300_000, bench.millivolts(8));
    }
    assertThat(bench.all(Result.class))
        .allSatisfy(result -> assertThat(result.quality()).isNotEqualTo(9));
  }

  @Test
  void aSilenceInTheMiddleOfAWaitIsOneGapAndNothingMore() {
    Setup patient = atRest().giveUpAfter(Duration.ofMinutes(10));
    Bench bench = Bench.of(patient).restless(5).pass(Duration.ofHours(1));
    assertThat(bench.all(Result.class)).hasSize(1);
    assertThat(bench.result().quality()).isEqualTo(9);
  }

  @Test
  void outOfTheStreamThereIsNeitherResultNorGap() {
    Bench bench = inStream();
    bench.read(20, bench.millivolts(8)).calibrate("mid").forgetWhatWasSaid();
    bench.read(50, bench.millivolts(40)).pass(Duration.ofHours(2));
    assertThat(bench.all(Result.class)).isEmpty();
    bench.tell("{\"do\":\"rinsed\"}").read(5, bench.millivolts(8));
    assertThat(bench.all(Result.class)).hasSize(1);
    assertThat(bench.result().outcome()).isEqualTo(Outcome.SETTLED);
  }

  @Test
  void aProbeThatStaysSilentAfterMaintenanceIsStillMissed() {
    Bench bench = inStream().calibrate("mid").pass(Duration.ofHours(2));
    bench.tell("{\"do\":\"rinsed\"}").forgetWhatWasSaid().pass(Duration.ofHours(1));
    assertThat(bench.all(Result.class)).hasSize(1);
    assertThat(bench.result().quality()).isEqualTo(9);
  }

  @Test
  void aRestartDoesNotRepeatTheResultOfTheSameRest() {
    Bench bench = inStream();
    bench.read(20, bench.millivolts(8));
    Bench later = bench.restarted(atRest(), Duration.ofSeconds(30));
    later.read(20, later.millivolts(8));
    assertThat(later.all(Result.class)).isEmpty();
    assertThat(later.all(Notice.class)).isEmpty();
    later.read(20, later.millivolts(9));
    assertThat(later.all(Result.class)).hasSize(1);
  }
}
