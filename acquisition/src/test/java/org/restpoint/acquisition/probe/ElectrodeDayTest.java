package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.State;

/** The electrode's day at a bench whose station file asks for care as usual. */
class ElectrodeDayTest {

  private static final String SOAK = "{\"do\":\"soak\"}";
  private static final String RINSED = "{\"do\":\"rinsed\"}";

  private static Bench bench() {
    return Bench.of(Setup.nitrate().care());
  }

  private static Bench soaked() {
    return bench().tell(SOAK).pass(Duration.ofMinutes(20));
  }

  private static Bench ready() {
    return soaked().calibrate("low").calibrate("high");
  }

  @Test
  void aWholeDayThatSkipsNothingFlagsNothing() {
    Bench bench = bench();
    assertThat(bench.state().state()).isEqualTo("needs soaking");
    bench.tell(SOAK).pass(Duration.ofMinutes(20));
    assertThat(bench.state().state()).isEqualTo("needs calibration");
    bench.calibrate("low").calibrate("high");
    assertThat(bench.state().state()).isEqualTo("ready");
    bench.measure(11);
    assertThat(bench.state().state()).isEqualTo("rinse due");
    assertThat(bench.state().nextStep()).isEqualTo("Rinse and blot (never wipe), then: rinsed");
    Instant rinsed = bench.now();
    bench.tell(RINSED);
    assertThat(bench.state().state()).isEqualTo("ready");
    assertThat(bench.state().outSince()).contains(rinsed);
    bench.measure(12).tell("{\"do\":\"rinsed\",\"into\":\"mid\"}");
    assertThat(bench.state().outSince()).isEmpty();
    bench.tell("{\"do\":\"store\"}");
    assertThat(bench.state().state()).isEqualTo("in storage");
    assertThat(bench.all(Result.class)).allSatisfy(r -> assertThat(r.flags()).isEmpty());
    assertThat(bench.all(Notice.class)).isEmpty();
  }

  @Test
  void whatIsLeftOfTheSoakingIsToldEachMinute() {
    Bench bench = bench().forgetWhatWasSaid().tell(SOAK).pass(Duration.ofMinutes(20));
    List<State> told = bench.all(State.class);
    assertThat(told).hasSize(21);
    assertThat(told.subList(0, 20)).extracting(State::state).containsOnly("soaking");
    assertThat(told.get(7).nextStep())
        .isEqualTo(
            "Leave the electrode in its soaking solution until 2026-04-02T14:20:00Z: 13 min left.");
    assertThat(told.get(7).until()).contains(Instant.parse("2026-04-02T14:20:00Z"));
  }

  @Test
  void aReadingBeforeTheSoakingIsOverIsFlaggedAndSoIsTheCalibration() {
    Bench bench = bench().tell(SOAK).pass(Duration.ofMinutes(5)).calibrate("low");
    assertThat(bench.calibration().flags()).contains("not-soaked");
    bench.calibrate("high").measure(11);
    assertThat(bench.result().flags()).containsExactly("not-soaked");
    bench.tell(RINSED).pass(Duration.ofMinutes(4)).measure(11);
    assertThat(bench.result().flags()).containsExactly("not-soaked");
  }

  @Test
  void standingInSolutionsForAsLongSoaksItToo() {
    Bench bench = bench().calibrate("low").pass(Duration.ofMinutes(20)).calibrate("high");
    assertThat(bench.calibration().flags()).doesNotContain("not-soaked");
    assertThat(bench.measure(11).result().flags()).isEmpty();
  }

  @Test
  void aRinseThatNobodyToldOfIsFlaggedOnTheNextReadingAlone() {
    Bench bench = ready().measure(11).measure(80);
    assertThat(bench.result().flags()).containsExactly("not-rinsed");
    assertThat(bench.calibrate("low").calibration().flags()).contains("not-rinsed");
    assertThat(bench.calibrate("high").calibration().flags()).doesNotContain("not-rinsed");
    assertThat(bench.measure(11).result().flags()).isEmpty();
  }

  @Test
  void aCancelledReadingHasToBeRinsedOffToo() {
    Bench bench = ready().tell("{\"do\":\"measure\"}").tell("{\"do\":\"cancel\"}");
    assertThat(bench.state().state()).isEqualTo("rinse due");
  }

  @Test
  void aTipOutOfSolutionForTooLongIsToldOnceAndFlaggedUntilItWasSoaked() {
    Bench bench = ready().measure(11).tell(RINSED);
    Instant rinsed = bench.now();
    bench.pass(Duration.ofHours(2));
    assertThat(bench.all(Notice.class)).hasSize(1);
    assertThat(bench.notice().code()).isEqualTo("tip-dry");
    assertThat(bench.notice().time()).isEqualTo(rinsed.plus(Duration.ofMinutes(5)));
    assertThat(bench.state().state()).isEqualTo("needs soaking");
    assertThat(bench.state().nextStep())
        .startsWith("The tip is out of solution since %s. ".formatted(rinsed));
    bench.measure(11);
    assertThat(bench.result().flags()).containsExactly("tip-dried", "not-soaked");
    bench.tell(RINSED).tell(SOAK).pass(Duration.ofMinutes(20)).measure(11);
    assertThat(bench.result().flags()).isEmpty();
  }

  @Test
  void aLongRestAsksForLongTermStorage() {
    Bench bench = ready().tell("{\"do\":\"store\",\"days\":15}");
    assertThat(bench.state().nextStep()).contains("long-term storage");
    bench.pass(Duration.ofDays(60));
    assertThat(bench.all(Notice.class)).isEmpty();
  }

  @Test
  void aShortRestThatBecomesALongOneIsToldOnce() {
    Bench bench = ready().tell("{\"do\":\"store\",\"days\":14}");
    assertThat(bench.state().nextStep()).doesNotContain("long-term");
    bench.pass(Duration.ofDays(60));
    assertThat(bench.all(Notice.class)).extracting(Notice::code).containsExactly("long-rest");
    assertThat(bench.state().nextStep()).contains("long-term storage");
  }

  @Test
  void aRestartKeepsTheDayAndTellsWhatCameDueMeanwhile() {
    Setup setup = Setup.nitrate().care();
    Bench bench = ready().measure(11).tell(RINSED).restarted(setup, Duration.ofMinutes(30));
    assertThat(bench.all(Notice.class)).extracting(Notice::code).containsExactly("tip-dry");
    assertThat(bench.notice().time()).isEqualTo(bench.now());
    assertThat(bench.state().state()).isEqualTo("needs soaking");
    bench.tell(SOAK).pass(Duration.ofMinutes(8));
    Bench again = bench.restarted(setup, Duration.ofMinutes(2));
    assertThat(again.state().nextStep()).endsWith("10 min left.");
    assertThat(again.restarted(setup, Duration.ofMinutes(10)).state().state()).isEqualTo("ready");
  }

  @Test
  void withoutCareNothingIsAskedForAndNothingFlagged() {
    Bench bench = Bench.of(Setup.nitrate()).calibrate("low").calibrate("high").measure(11);
    assertThat(bench.state().state()).isEqualTo("ready");
    bench.tell(RINSED).pass(Duration.ofHours(2)).measure(11);
    assertThat(bench.result().flags()).isEmpty();
    assertThat(bench.state().outSince()).isEmpty();
    assertThat(bench.all(Notice.class)).isEmpty();
  }

  @Test
  void aStandardThatIsNotThereTakesNoElectrode() {
    Bench bench = ready().tell("{\"do\":\"rinsed\",\"into\":\"middle\"}");
    assertThat(bench.notice().code()).isEqualTo("standard-unknown");
  }
}
