package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Result;
import org.restpoint.config.station.Calibrate;

/** Samples between two readings of a standard, on an electrode that moves in between. */
class BracketsTest {

  private static final Setup SETUP =
      Setup.nitrate().restandardize("mid", new Calibrate.Every.Samples(2)).bracket();

  /** Standards, then a sample of 20 mg/L after ten minutes. */
  private static Bench sampled() {
    return Bench.of(SETUP)
        .calibrate("low")
        .calibrate("high")
        .pass(Duration.ofMinutes(10))
        .measure(20);
  }

  /** Reads the standard ten minutes later, moved by so much. */
  private static Bench closed(Bench bench, double millivolts) {
    return bench.pass(Duration.ofMinutes(10)).calibrateOff("mid", millivolts);
  }

  @Test
  void aSampleIsToldAtOnceAndSaysThatItsBracketIsOpen() {
    Result result = sampled().result();
    assertThat(result.flags()).containsExactly("bracket-open");
    assertThat(result.concentration().orElseThrow().value()).isCloseTo(20, within(1e-6));
  }

  /**
   * The standard of 20 mg/L reads 2 mV higher after 20 min, of which the sample came 10 min and 3 s
   * after the first calibration and the next 20 min and 6 s: a share of 603/1206 = 0.5, 1 mV. The
   * slope is 97 % of the ideal: -57.3843 mV/decade, so 20 · 10^(1/57.3843) = 20.8188 mg/L.
   */
  @Test
  void withTheNextStandardItIsSaidAgainWithTheOffsetOfItsTime() {
    Result result = closed(sampled(), 2).result();
    assertThat(result.revision()).isEqualTo(2);
    assertThat(result.flags()).isEmpty();
    assertThat(result.quality()).isEqualTo(1);
    assertThat(result.concentration().orElseThrow().value()).isCloseTo(20.8188, within(1e-3));
    assertThat(result.reported().orElseThrow().value())
        .isEqualTo(result.concentration().orElseThrow().value());
    assertThat(result.revised().orElseThrow().because()).endsWith("ends its bracket");
    assertThat(result.calibration().orElseThrow().until()).isPresent();
  }

  @Test
  void theWayBetweenCountsInItsUncertainty() {
    double still = closed(sampled(), 0).result().concentration().orElseThrow().uncertainty();
    double moved = closed(sampled(), 4).result().concentration().orElseThrow().uncertainty();
    assertThat(moved).isGreaterThan(still * 1.5);
  }

  @Test
  void eachSampleOfABracketIsSaidAgainOnceAlsoAfterARestart() {
    Bench bench = sampled().measure(40).forgetWhatWasSaid();
    closed(bench, 1);
    assertThat(bench.all(Result.class)).hasSize(2);
    assertThat(bench.pass(Duration.ofMinutes(5)).calibrate("mid").all(Result.class)).hasSize(2);
  }

  @Test
  void aStandardThatIsRefusedEndsNoBracket() {
    Bench bench = closed(sampled().forgetWhatWasSaid(), 30);
    assertThat(bench.calibration().verdict().name()).isEqualTo("REFUSED");
    assertThat(bench.all(Result.class)).isEmpty();
    bench.calibrate("mid");
    assertThat(bench.result().flags()).isEmpty();
    assertThat(bench.result().revision()).isEqualTo(2);
  }

  @Test
  void aStandardThatTheOperatorAcceptsEndsNoBracketAsNobodyKnowsWhenItMoved() {
    Bench bench = closed(sampled(), 30).tell("{\"do\":\"accept-standard\"}");
    assertThat(bench.answer().verdict()).isEqualTo(Answer.Verdict.DONE);
    bench.calibrate("mid");
    assertThat(bench.result().revision()).isEqualTo(1);
    assertThat(bench.result().flags()).containsExactly("bracket-open");
  }

  @Test
  void withoutBracketsNothingIsFlaggedOrSaidAgain() {
    Bench bench = Bench.of(Setup.nitrate()).calibrate("low").calibrate("high").measure(20);
    bench.calibrateOff("mid", 2);
    assertThat(bench.all(Result.class)).extracting(Result::flags).isEqualTo(List.of(List.of()));
  }
}
