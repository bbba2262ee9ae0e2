package org.restpoint.stability.settle1;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SweepTest {

  /**
   * Drawn ones of both resolutions; a fall whose first window of 10 s has a slope of exactly 0.6
   * mV/min, as a blip stands in its middle, and whose next windows are steeper; and readings that
   * lie exactly 0.1 and 0.02 mV apart.
   */
  static List<Curve> curves() {
    List<Curve> drawn = Settle1.curves(20_260_101, 4);
    assertThat(drawn.stream().map(it -> it.noise().resolutionMillivolts()).distinct()).hasSize(2);
    return List.of(
        drawn.get(0),
        drawn.get(1),
        drawn.get(2),
        drawn.get(3),
        Curves.showing(t -> 1 - Math.min(t, 12) / 100.0 + (t == 5 ? 0.05 : 0)),
        Curves.showing(t -> t < 300 ? (t % 2) * 0.1 : (t % 3) * 0.01));
  }

  private static void decidesAsTheRule(Function<List<Curve>, List<Swept>> sweep, Curve curve) {
    for (Swept swept : sweep.apply(List.of(curve))) {
      Decision decision = swept.candidate().decide(curve);
      String name = swept.candidate().name();
      assertThat(swept.meanSeconds()).as(name).isEqualTo(decision.seconds());
      if (decision instanceof Decision.Settled settled) {
        assertThat(swept.never()).isZero();
        assertThat(swept.bias()).as(name).isCloseTo(settled.errorMillivolts(), within(1e-9));
      } else {
        assertThat(swept.never()).isEqualTo(1);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("curves")
  void theSweepOfConsecutiveReadingsDecidesAsTheRule(Curve curve) {
    decidesAsTheRule(ConsecutiveSweep::raw, curve);
  }

  @ParameterizedTest
  @MethodSource("curves")
  void theSweepOfMediansDecidesAsTheRuleOnMedians(Curve curve) {
    decidesAsTheRule(ConsecutiveSweep::onMediansOfThree, curve);
  }

  @ParameterizedTest
  @MethodSource("curves")
  void theSweepOfDriftDecidesAsTheRule(Curve curve) {
    decidesAsTheRule(DriftSweep::raw, curve);
  }

  @Test
  void aLimitMetExactlyIsMet() {
    List<Swept> met =
        DriftSweep.raw(List.of(curves().get(4))).stream()
            .filter(
                it -> named(it).equals("drift within 0.6 mV/min over 10 s with 0 standard errors"))
            .toList();
    assertThat(met).singleElement().returns(10.0, Swept::meanSeconds);
  }

  private static String named(Swept swept) {
    return swept.candidate().name();
  }

  @ParameterizedTest
  @MethodSource("sweeps")
  void sharesAndMeansOfASweepAreTheScoresOfTheRule(Function<List<Curve>, List<Swept>> sweep) {
    List<Curve> curves = Settle1.curves(20_260_102, 40);
    List<Swept> settings = sweep.apply(curves);
    for (int i = 0; i < settings.size(); i += settings.size() / 5) {
      Swept swept = settings.get(i);
      Scores scores = Scores.of(swept.candidate(), curves);
      assertThat(swept.never()).isEqualTo(scores.never());
      assertThat(swept.overOneMillivolt()).isEqualTo(scores.overOneMillivolt());
      assertThat(swept.overHalfMillivolt()).isEqualTo(scores.overHalfMillivolt());
      assertThat(swept.meanSeconds()).isEqualTo(scores.meanSeconds());
      assertThat(swept.rootMeanSquare()).isCloseTo(scores.rootMeanSquare(), within(1e-9));
    }
  }

  static List<Function<List<Curve>, List<Swept>>> sweeps() {
    return List.of(ConsecutiveSweep::raw, ConsecutiveSweep::onMediansOfThree, DriftSweep::raw);
  }
}
