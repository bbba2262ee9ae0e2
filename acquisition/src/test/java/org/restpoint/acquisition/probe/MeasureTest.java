package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Progress;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Outcome;

class MeasureTest {

  private static Bench calibrated() {
    return Bench.of(Setup.nitrate()).calibrate("low").calibrate("high");
  }

  private static double measured(Bench bench) {
    Result result = bench.result();
    assertThat(result.outcome()).isEqualTo(Outcome.SETTLED);
    return result.concentration().orElseThrow().value();
  }

  @Test
  void progressIsToldAtMostOnceASecondEvenFromOneAttemptToTheNext() {
    Bench bench = Bench.of(Setup.nitrate());
    for (int attempt = 0; attempt < 10; attempt++) {
      bench.tell("calibrate", "low");
      for (int i = 0; i < 17; i++) {
        bench.readAfterMillis(100, i < 14 ? 200 + i : 300);
      }
    }
    List<Progress> told = bench.all(Progress.class);
    assertThat(bench.all(Calibration.class)).hasSize(10);
    assertThat(told).hasSizeGreaterThanOrEqualTo(10);
    for (int i = 1; i < told.size(); i++) {
      assertThat(Duration.between(told.get(i - 1).time(), told.get(i).time()))
          .isGreaterThanOrEqualTo(Duration.ofSeconds(1));
    }
  }

  @Test
  void progressSaysHowFarItHasCome() {
    Bench bench = Bench.of(Setup.nitrate()).tell("calibrate", "low");
    bench.read(1, 200).read(1, 200.5);
    assertThat(bench.all(Progress.class))
        .last()
        .satisfies(
            told -> {
              assertThat(told.readings()).isEqualTo(2);
              assertThat(told.elapsedSeconds()).isEqualTo(2);
              assertThat(told.latestMillivolts()).isEqualTo(200.5);
              assertThat(told.spreadMillivolts()).isEqualTo(0.5);
              assertThat(told.driftMillivoltsPerMinute().orElseThrow()).isCloseTo(30, within(1e-6));
            });
  }

  @Test
  void nothingIsAtRestBeforeItsTime() {
    Bench bench = Bench.of(Setup.nitrate().notBefore(Duration.ofSeconds(20)));
    bench.tell("calibrate", "low").read(19, 200);
    assertThat(bench.all(Calibration.class)).isEmpty();
    bench.read(1, 200);
    assertThat(bench.calibration().time()).isEqualTo(Bench.START.plusSeconds(20));
  }

  @Test
  void aReadingExactlyAtTheDeadlineStillCounts() {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}");
    bench.restless(57).read(3, bench.millivolts(11));
    assertThat(bench.result().outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(bench.result().elapsedSeconds()).isEqualTo(60);
  }

  @Test
  void aReadingAMillisecondAfterTheDeadlineComesTooLate() {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}");
    bench.restless(57).read(2, bench.millivolts(11)).readAfterMillis(1001, bench.millivolts(11));
    Result result = bench.result();
    assertThat(result.outcome()).isEqualTo(Outcome.UNSETTLED);
    assertThat(result.time()).isEqualTo(Bench.START.plusSeconds(66));
    assertThat(result.elapsedSeconds()).isEqualTo(60);
    assertThat(result.readings()).isEqualTo(59);
  }

  @Test
  void theWaitIsGivenUpAtTheDeadlineWhenTimePassesWithoutReadings() {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}").restless(10);
    bench.pass(Duration.ofSeconds(50));
    assertThat(bench.all(Result.class)).isEmpty();
    bench.pass(Duration.ofMillis(1));
    assertThat(bench.result().outcome()).isEqualTo(Outcome.UNSETTLED);
    assertThat(bench.result().elapsedSeconds()).isEqualTo(60);
  }

  @Test
  void whenNoReadingWillComeAnyMoreTheWaitIsGivenUp() {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}").restless(10).conclude();
    assertThat(bench.result().outcome()).isEqualTo(Outcome.UNSETTLED);
    assertThat(bench.result().elapsedSeconds()).isEqualTo(60);
    int said = bench.said().size();
    assertThat(bench.conclude().said()).hasSize(said);
  }

  @Test
  void readingsAtOrBeforeTheInstructionDoNotCount() {
    Bench bench = Bench.of(Setup.nitrate()).read(10, 200).tell("calibrate", "low");
    bench.readAfterMillis(0, 200).read(2, 200);
    assertThat(bench.all(Calibration.class)).isEmpty();
    bench.read(1, 200);
    assertThat(bench.calibration().points()).hasSize(1);
  }

  @Test
  void whatDoesNotSettleIsNeverANumber() {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}").restless(61);
    Result result = bench.result();
    assertThat(result.outcome()).isEqualTo(Outcome.UNSETTLED);
    assertThat(result.concentration()).isEmpty();
    assertThat(result.reported()).isEmpty();
    assertThat(result.millivolts()).isEmpty();
    assertThat(result.calibration()).isEmpty();
    assertThat(result.latestMillivolts()).isPresent();
    assertThat(result.quality()).isEqualTo(4);
    assertThat(result.flags()).containsExactly("unsettled");
    assertThat(result.reasons().get(0).text())
        .isEqualTo(
            "not at rest within 1 min: 60 readings, the last of them spread over 1 mV, drifting 0"
                + " mV/min; the rule is consecutive 3 within 0.1 mV");
  }

  @Test
  void silenceIsMissingAndSaysWhereToLook() {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}").pass(Duration.ofMinutes(2));
    Result result = bench.result();
    assertThat(result.outcome()).isEqualTo(Outcome.UNSETTLED);
    assertThat(result.quality()).isEqualTo(9);
    assertThat(result.flags()).containsExactly("no-readings");
    assertThat(result.reasons().get(0).text()).isEqualTo("no reading came within 1 min");
    assertThat(bench.answer().outcome()).isEqualTo(Optional.of(result));
  }

  @Test
  void aPotentialThatNoSolutionGivesIsRefused() {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}").read(3, 1999.9);
    Result result = bench.result();
    assertThat(result.outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(result.concentration()).isEmpty();
    assertThat(result.millivolts().orElseThrow()).isCloseTo(1999.9, within(1e-9));
    assertThat(result.reasons().get(0).code()).isEqualTo("out-of-range");
    assertThat(result.reasons().get(0).text())
        .isEqualTo("2000 mV is beyond what any solution gives with this calibration");
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e308, -1e308, Double.MAX_VALUE})
  void aMeterGoneMadIsRefusedAndNothingElseHappens(double millivolts) {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}").read(3, millivolts);
    assertThat(bench.result().outcome()).isEqualTo(Outcome.REFUSED);
    bench.tell("{\"do\":\"measure\"}");
    for (int i = 0; i < 61; i++) {
      bench.read(1, i % 2 == 0 ? millivolts : -millivolts);
    }
    assertThat(bench.result().outcome()).isEqualTo(Outcome.UNSETTLED);
    assertThat(bench.result().spreadMillivolts().orElseThrow()).isEqualTo(2e6);
  }

  @Test
  void withoutATemperatureThereIsNoNumber() {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}");
    bench.read(3, 200, new Temperature.Missing("the thermometer is mute", "Plug it in."));
    Result result = bench.result();
    assertThat(result.outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(result.flags()).containsExactly("no-temperature");
    assertThat(result.reasons().get(0).text()).isEqualTo("the thermometer is mute");
    assertThat(result.concentration()).isEmpty();
    assertThat(result.celsius()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {-273.15, -127, 850})
  void aTemperatureThatNoSolutionHasIsRefused(double celsius) {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}");
    bench.read(3, bench.millivolts(11), Bench.known(celsius));
    assertThat(bench.result().outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(bench.result().reasons().get(0).text())
        .isEqualTo(
            "the temperature reads %s °C, which no solution has".formatted(Words.number(celsius)));
  }

  @Test
  void anOldTemperatureThatIsLetPassIsFlagged() {
    Bench bench = calibrated().tell("{\"do\":\"measure\"}");
    bench.read(3, bench.millivolts(11), new Temperature.Known(25, 0.2, true));
    assertThat(measured(bench)).isCloseTo(11, within(1e-6));
    assertThat(bench.result().flags()).containsExactly("temperature-stale");
    assertThat(bench.result().quality()).isEqualTo(3);
  }

  @Test
  void aSampleOutsideTheStandardsIsFlagged() {
    Bench bench = calibrated();
    assertThat(bench.measure(4.9).result().flags()).containsExactly("below-standards");
    assertThat(bench.measure(101).result().flags()).containsExactly("above-standards");
    assertThat(bench.measure(5.1).result().flags()).isEmpty();
  }

  @Test
  void theSampleRecordTravelsWithItsResult() {
    Bench bench =
        calibrated()
            .tell("{\"do\":\"measure\",\"sample\":{\"number\":\"S-1\",\"field\":\"north 40\"}}");
    bench.read(3, bench.millivolts(11));
    assertThat(bench.result().sample().orElseThrow().get("field").textValue())
        .isEqualTo("north 40");
  }
}
