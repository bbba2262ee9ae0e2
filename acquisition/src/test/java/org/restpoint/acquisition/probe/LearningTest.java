package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Progress;
import org.restpoint.acquisition.event.Result;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.rest.AnyOf;
import org.restpoint.stability.rest.ConsecutiveRule;
import org.restpoint.stability.rest.ForecastRule;
import org.restpoint.stability.rest.forecast.ResponseHistory;
import org.restpoint.stability.rest.forecast.ResponsePrior;
import org.restpoint.stability.rest.forecast.ResponseSeen;

/** An invented electrode that comes to rest from 30 mV away, with a time constant of 25 s. */
class LearningTest {

  private static final double SLOW_SECONDS = 25;
  private static final Duration HOUR = Duration.ofHours(1);

  private static Setup setup() {
    return Setup.nitrate().rule(new ForecastRule(1)).giveUpAfter(Duration.ofMinutes(10));
  }

  /** Comes to the rest of a solution until it has been decided, and a little longer. */
  private static Bench approach(Bench bench, double rest, double seconds) {
    int before = bench.all(Result.class).size() + bench.all(Calibration.class).size();
    for (int second = 0; second < 700; second++) {
      bench.read(1, rest - 30 * Math.exp(-second / seconds));
      if (bench.all(Result.class).size() + bench.all(Calibration.class).size() > before) {
        return bench;
      }
    }
    return bench;
  }

  private static Bench calibrated(Setup setup) {
    Bench bench = Bench.of(setup);
    approach(bench.tell("calibrate", "low"), bench.millivolts(5), SLOW_SECONDS);
    return approach(bench.tell("calibrate", "high"), bench.millivolts(100), SLOW_SECONDS);
  }

  private static Bench measure(Bench bench, double seconds) {
    return approach(bench.tell("{\"do\":\"measure\"}"), bench.millivolts(20), seconds);
  }

  private static long learnt(Bench bench) {
    return bench.remembered().response().map(ResponseHistory::readings).orElse(-1L);
  }

  @Test
  void eachFinishedReadingTeachesWhateverItIsForAndTheNextOnesAreSooner() {
    Bench bench = calibrated(setup());
    assertThat(learnt(bench)).isEqualTo(2);
    Result first = measure(bench, SLOW_SECONDS).result();
    assertThat(first.responseReadings()).hasValue(2);
    approach(bench.tell("verify", "mid"), bench.millivolts(20), SLOW_SECONDS);
    assertThat(bench.result().responseReadings()).hasValue(3);
    for (int i = 0; i < 8; i++) {
      measure(bench, SLOW_SECONDS);
    }
    assertThat(bench.result().responseReadings()).hasValue(11);
    assertThat(learnt(bench)).isEqualTo(12);
    double unlearnt =
        measure(calibrated(setup().learn(false)), SLOW_SECONDS).result().elapsedSeconds();
    assertThat(bench.result().elapsedSeconds()).isLessThan(0.9 * unlearnt);
    assertThat(bench.all(Notice.class)).isEmpty();
  }

  @Test
  void progressTellsHowMuchIsKnown() {
    Bench bench = measure(calibrated(setup()), SLOW_SECONDS);
    List<Progress> told = bench.all(Progress.class);
    assertThat(told.get(0).responseReadings()).hasValue(0);
    assertThat(told.get(told.size() - 1).responseReadings()).hasValue(2);
  }

  @Test
  void theStreamTeachesToo() {
    Bench bench = calibrated(setup().routine(new Routine.EachRest(HOUR)));
    approach(bench.tell("{\"do\":\"rinsed\"}"), bench.millivolts(20), SLOW_SECONDS);
    assertThat(bench.result().outcome()).isEqualTo(Result.Outcome.SETTLED);
    assertThat(learnt(bench)).isEqualTo(3);
  }

  @Test
  void whatWasDisturbedTeachesNothing() {
    Bench bench = calibrated(setup()).tell("{\"do\":\"measure\"}");
    double rest = bench.millivolts(20);
    for (int second = 0; second < 15; second++) {
      bench.read(1, rest - 30 * Math.exp(-second / SLOW_SECONDS));
    }
    approach(bench, rest - 12, SLOW_SECONDS);
    assertThat(bench.result().outcome()).isEqualTo(Result.Outcome.SETTLED);
    assertThat(learnt(bench)).isEqualTo(2);
  }

  @Test
  void whatWasGivenUpCancelledOrRefusedTeachesNothing() {
    Bench bench = calibrated(setup());
    bench.tell("{\"do\":\"measure\"}");
    Random wandering = new Random(3);
    for (int i = 0; i < 610; i++) {
      bench.read(1, 200 + 20 * wandering.nextDouble());
    }
    assertThat(bench.result().outcome()).isEqualTo(Result.Outcome.UNSETTLED);
    bench.tell("{\"do\":\"measure\"}").read(5, 200).tell("{\"do\":\"cancel\"}");
    approach(bench.tell("{\"do\":\"measure\"}"), 4000, SLOW_SECONDS);
    assertThat(bench.result().reasons()).extracting(Reason::code).containsExactly("out-of-range");
    assertThat(learnt(bench)).isEqualTo(2);
    approach(bench.tell("calibrate", "low"), bench.millivolts(5), SLOW_SECONDS);
    approach(bench.tell("calibrate", "high"), bench.millivolts(5), SLOW_SECONDS);
    assertThat(bench.calibration().verdict()).isEqualTo(Calibration.Verdict.REFUSED);
    assertThat(learnt(bench)).isEqualTo(3);
  }

  @Test
  void whatWasLearntGoesOnAfterARestartToTheLastBit() {
    Bench bench = calibrated(setup());
    Bench later = bench.restarted(setup(), Duration.ofMinutes(1));
    Result after = measure(later, SLOW_SECONDS).result();
    Result before = measure(bench, SLOW_SECONDS).result();
    assertThat(after.responseReadings()).hasValue(2);
    assertThat(after.elapsedSeconds()).isEqualTo(before.elapsedSeconds());
    assertThat(after.millivolts()).isEqualTo(before.millivolts());
    assertThat(later.remembered().response()).isEqualTo(bench.remembered().response());
  }

  @Test
  void withoutLearningNothingIsKeptAndEachReadingIsAsTheFirst() {
    Bench bench = calibrated(setup());
    Bench without = bench.restarted(setup().learn(false), Duration.ofMinutes(1));
    Result first = measure(without, SLOW_SECONDS).result();
    assertThat(first.responseReadings()).isEmpty();
    assertThat(without.all(Progress.class))
        .allSatisfy(told -> assertThat(told.responseReadings()).isEmpty());
    assertThat(without.remembered().response()).isEmpty();
    assertThat(measure(without, SLOW_SECONDS).result().elapsedSeconds())
        .isEqualTo(first.elapsedSeconds());
  }

  @Test
  void otherRulesAndCombinationsLearnNothing() {
    ConsecutiveRule alike = new ConsecutiveRule(10, 0.1);
    for (Setup setup :
        List.of(
            setup().rule(alike), setup().rule(new AnyOf(List.of(new ForecastRule(1), alike))))) {
      Bench bench = calibrated(setup);
      assertThat(bench.remembered().response()).isEmpty();
      assertThat(measure(bench, SLOW_SECONDS).result().responseReadings()).isEmpty();
    }
  }

  @Test
  void theElectrodeOfAnotherIonIsAnotherElectrode() {
    Bench bench = calibrated(setup());
    assertThat(learnt(bench.restarted(setup().analyte("ammonium"), HOUR))).isZero();
  }

  @Test
  void aReplacedMembraneEndsTheCalibrationAndForgetsTheResponse() {
    Bench bench = calibrated(setup()).forgetWhatWasSaid();
    bench.tell("{\"id\":\"r\",\"do\":\"replaced\",\"part\":\"membrane\"}");
    assertThat(bench.all(Answer.class))
        .extracting(Answer::verdict)
        .containsExactly(Answer.Verdict.ACCEPTED, Answer.Verdict.DONE);
    assertThat(bench.notice().code()).isEqualTo("electrode-replaced");
    assertThat(bench.notice().text())
        .isEqualTo(
            "a new membrane: the calibration in force has ended, and what was learnt of the response"
                + " is forgotten");
    assertThat(bench.state().state()).isEqualTo("needs calibration");
    assertThat(bench.state().nextStep()).endsWith("then: calibrate standard=low");
    assertThat(learnt(bench)).isZero();
    assertThat(bench.remembered().inForce()).isEmpty();
    bench.tell("{\"do\":\"measure\"}");
    assertThat(bench.result().reasons()).extracting(Reason::code).containsExactly("not-calibrated");
    approach(bench.tell("calibrate", "low"), bench.millivolts(5), SLOW_SECONDS);
    assertThat(bench.calibration().slopeFrom())
        .as("nothing is left of the old slope")
        .hasValue("ideal");
    assertThat(bench.restarted(setup(), HOUR).all(Notice.class)).isEmpty();
  }

  @Test
  void aReplacedElectrodeIsOutOfItsStreamUntilItIsRinsed() {
    Setup setup = setup().routine(new Routine.EachRest(HOUR));
    Bench bench = calibrated(setup).tell("{\"do\":\"rinsed\"}").read(3, 200);
    bench.tell("{\"do\":\"replaced\",\"part\":\"electrode\"}");
    assertThat(bench.notice().text()).startsWith("a new electrode:");
    assertThat(bench.result().reasons()).extracting(Reason::code).containsExactly("in-maintenance");
    assertThat(bench.remembered().away()).isTrue();
  }

  @Test
  void aStandardBeingReadKeepsItFromBeingReplaced() {
    Bench bench = Bench.of(setup()).tell("calibrate", "low").tell("{\"do\":\"replaced\"}");
    assertThat(bench.answer().reasons()).extracting(Reason::code).containsExactly("busy");
  }

  /** What was learnt from 40 readings that were one curve, and then one that was another. */
  private static ResponseHistory wary(int usual, int odd) {
    ResponseHistory history = ResponseHistory.empty();
    for (int i = 0; i < 40; i++) {
      history = history.with(seen(usual));
    }
    return history.with(seen(odd));
  }

  private static ResponseSeen seen(int curve) {
    List<Double> weights = new ArrayList<>(Collections.nCopies(ResponsePrior.curves(), 0.0));
    weights.set(curve, 1.0);
    return new ResponseSeen(300, true, 300, weights);
  }

  /**
   * What it takes to be taken for another electrode is for {@code ResponseHistory} to say; of many
   * that have seen another response than this electrode's, some must forget with its reading.
   */
  @Test
  void aResponseThatChangesIsToldOnceEachTimeItIsLearntAnew() {
    Bench taught = calibrated(setup());
    List<Notice> told = new ArrayList<>();
    for (int usual : List.of(0, 130, 260, 390, ResponsePrior.curves() - 1)) {
      for (int odd : List.of(0, 130, 260, 390, ResponsePrior.curves() - 1)) {
        ResponseHistory before = wary(usual, odd);
        Bench bench = measure(taught.knowing(setup(), before), SLOW_SECONDS);
        List<Notice> notices = bench.all(Notice.class);
        ResponseHistory after = bench.remembered().response().orElseThrow();
        assertThat(notices).hasSize((int) (after.changes() - before.changes()));
        assertThat(notices.isEmpty() || after.readings() == 1).isTrue();
        assertThat(bench.remembered().inForce()).as("results go on").isPresent();
        told.addAll(notices);
      }
    }
    assertThat(told)
        .isNotEmpty()
        .allSatisfy(
            notice -> {
              assertThat(notice.code()).isEqualTo("response-changed");
              assertThat(notice.text()).contains("otherwise than the last ", "learnt anew");
              assertThat(notice.remedy()).contains("a new membrane", "ageing", "stirring");
            });
  }
}
