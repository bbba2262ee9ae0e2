package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Progress;
import org.restpoint.acquisition.event.Result;
import org.restpoint.config.station.Routine;
import org.restpoint.config.station.SettleRule;
import org.restpoint.stability.rest.AllOf;
import org.restpoint.stability.rest.DriftRule;
import org.restpoint.stability.rest.ForecastRule;

class ForecastTest {

  private static final Duration HOUR = Duration.ofHours(1);

  private static Setup setup() {
    return Setup.nitrate().rule(new ForecastRule(1)).giveUpAfter(Duration.ofMinutes(10));
  }

  /** Reads standards until each is foretold. */
  private static Bench calibrated(Setup setup) {
    Bench bench = Bench.of(setup);
    bench.tell("calibrate", "low").read(30, bench.millivolts(5));
    return bench.tell("calibrate", "high").read(30, bench.millivolts(100));
  }

  /** Comes to a rest from some mV above it, with a time constant of 20 s. */
  private static Bench approach(Bench bench, double rest, double above, int seconds) {
    for (int second = 1; second <= seconds; second++) {
      bench.read(1, rest + above * Math.exp(-second / 20.0));
    }
    return bench;
  }

  @Test
  void nothingIsForetoldBeforeTheStationFileSaysItCanBe() {
    Duration earliest =
        new SettleRule.Forecast(new SettleRule.Within.Millivolts(100), true).shortestWait();
    Bench bench = Bench.of(setup().rule(new ForecastRule(100))).tell("calibrate", "low");
    for (int i = 0; bench.all(Calibration.class).isEmpty() && i < 600; i++) {
      bench.readAfterMillis(100, 200);
    }
    assertThat(bench.calibration().time())
        .isBetween(
            Bench.START.plus(earliest), Bench.START.plus(earliest).plus(Duration.ofSeconds(1)));
  }

  @Test
  void progressCarriesTheForecastAsSoonAsThereIsOne() {
    Bench bench = Bench.of(setup()).tell("calibrate", "low").read(2, 200);
    assertThat(bench.all(Progress.class))
        .allSatisfy(
            told -> {
              assertThat(told.forecastMillivolts()).isEmpty();
              assertThat(told.forecastUncertaintyMillivolts()).isEmpty();
            });
    bench.read(20, 200);
    assertThat(bench.all(Progress.class))
        .last()
        .satisfies(
            told -> {
              assertThat(told.forecastMillivolts().orElseThrow()).isCloseTo(200, within(0.5));
              assertThat(told.forecastUncertaintyMillivolts().orElseThrow()).isBetween(0.0, 5.0);
              assertThat(told.members()).isEmpty();
            });
  }

  @Test
  void progressTellsWhereThePotentialIsGoingWhileItIsStillOnItsWay() {
    Bench bench = Bench.of(setup()).tell("calibrate", "low");
    approach(bench, 200, 10, 25);
    assertThat(bench.all(Calibration.class)).isEmpty();
    Progress told = bench.all(Progress.class).get(bench.all(Progress.class).size() - 1);
    double uncertainty = told.forecastUncertaintyMillivolts().orElseThrow();
    assertThat(2.5 * uncertainty).isGreaterThan(1);
    assertThat(told.forecastMillivolts().orElseThrow()).isCloseTo(200, within(2 * uncertainty));
    assertThat(told.latestMillivolts()).isGreaterThan(202);
  }

  @Test
  void aRuleThatDoesNotForetellHasNoForecast() {
    Bench bench = Bench.of(Setup.nitrate().readings(50)).tell("calibrate", "low").read(40, 200);
    assertThat(bench.all(Progress.class))
        .hasSize(40)
        .allSatisfy(told -> assertThat(told.forecastMillivolts()).isEmpty());
  }

  @Test
  void inACombinationTheMemberThatForetellsCarriesIt() {
    DriftRule drift = new DriftRule(0.2, Duration.ofSeconds(60));
    Setup both = setup().rule(new AllOf(List.of(drift, new ForecastRule(1))));
    Bench bench = Bench.of(both).tell("calibrate", "low").read(50, 200);
    Progress told = bench.all(Progress.class).get(bench.all(Progress.class).size() - 1);
    assertThat(told.forecastMillivolts()).as("what is waited for is the drift").isEmpty();
    List<Progress.Member> members = told.members().orElseThrow();
    assertThat(members.get(0).forecastMillivolts()).isEmpty();
    assertThat(members.get(1).atRest()).isTrue();
    assertThat(members.get(1).forecastMillivolts().orElseThrow()).isCloseTo(200, within(0.5));
    assertThat(members.get(1).forecastUncertaintyMillivolts()).isPresent();
  }

  @Test
  void inTheStreamTheRestOfTheWayIsNoNewRest() {
    Bench bench = calibrated(setup().routine(new Routine.EachRest(HOUR)));
    bench.tell("{\"do\":\"rinsed\"}").forgetWhatWasSaid();
    double rest = bench.millivolts(20);
    approach(bench, rest, 30, 300);
    assertThat(bench.all(Result.class)).hasSize(1);
    Result first = bench.result();
    assertThat(first.forecast()).isTrue();
    assertThat(first.elapsedSeconds()).isLessThan(120);
    assertThat(first.millivolts().orElseThrow())
        .isCloseTo(rest, within(2 * first.millivoltsUncertainty().orElseThrow()));
    approach(bench, rest - 20, 20, 300);
    assertThat(bench.all(Result.class)).hasSize(2);
    assertThat(bench.result().millivolts().orElseThrow()).isCloseTo(rest - 20, within(1.0));
  }

  @Test
  void afterARestartTheStreamStillKnowsTheRestThatWasForetold() {
    Setup setup = setup().routine(new Routine.EachRest(HOUR));
    Bench bench = calibrated(setup);
    bench.tell("{\"do\":\"rinsed\"}").forgetWhatWasSaid();
    double rest = bench.millivolts(20);
    approach(bench, rest, 30, 200);
    assertThat(bench.all(Result.class)).hasSize(1);
    Bench again = bench.restarted(setup, Duration.ofSeconds(1)).read(60, rest);
    assertThat(again.all(Result.class)).isEmpty();
  }
}
