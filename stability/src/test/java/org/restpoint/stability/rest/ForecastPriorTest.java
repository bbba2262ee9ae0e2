package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.rest.forecast.ResponsePrior;
import org.restpoint.stability.rest.forecast.ResponseSeen;

/** An electrode that is known from before is foretold sooner. */
class ForecastPriorTest {

  private static final int CURVES = ResponsePrior.curves();
  private static final ForecastRule RULE = new ForecastRule(1);

  /** One reading of an electrode that responds by film diffusion in 25 s or so; invented. */
  private static double[] reading(Random random) {
    double tau = 25 * Math.exp(0.1 * random.nextGaussian());
    double before = 1 - Math.pow(10, -0.5 - random.nextDouble());
    double[] millivolts = new double[300];
    for (int t = 0; t < millivolts.length; t++) {
      double clean = 150 + Traces.SLOPE * Math.log10(1 - before * Math.exp(-t / tau));
      millivolts[t] = clean + 0.1 * random.nextGaussian();
    }
    return millivolts;
  }

  private static ResponseSeen seen(double[] millivolts) {
    ForecastDetector detector = RULE.detector(Traces.SLOPE, ResponsePrior.uninformed());
    Traces.feed(detector, millivolts);
    return detector.response().orElseThrow();
  }

  /** The mean of ten responses, half of it what nobody knows. */
  private static ResponsePrior learnt(Random random) {
    List<Double> nothing = ResponsePrior.uninformed().levels().get(0).rising();
    List<Double> weights = new ArrayList<>();
    for (double weight : nothing) {
      weights.add(0.5 * weight);
    }
    for (int i = 0; i < 10; i++) {
      List<Double> told = seen(reading(random)).weights();
      for (int curve = 0; curve < CURVES; curve++) {
        weights.set(curve, weights.get(curve) + 0.05 * told.get(curve));
      }
    }
    return ResponsePrior.alike(weights);
  }

  /** When, and whether it is off by more than w. */
  private record Decided(double seconds, boolean wrong) {}

  private static Decided decide(ResponsePrior prior, double[] millivolts) {
    ForecastDetector detector = RULE.detector(Traces.SLOPE, prior);
    for (int t = 0; t < millivolts.length; t++) {
      if (detector.accept(t * Traces.SECOND, millivolts[t])) {
        return new Decided(t, Math.abs(detector.potential().millivolts() - 150) > 1);
      }
    }
    throw new AssertionError("not at rest within five minutes");
  }

  private static double seconds(ResponsePrior prior, double[] millivolts) {
    return decide(prior, millivolts).seconds();
  }

  @Test
  void anElectrodeThatIsKnownIsForetoldSoonerAndNotWorse() {
    Random random = new Random(5);
    ResponsePrior known = learnt(random);
    double with = 0;
    double without = 0;
    int wrongWith = 0;
    int wrongWithout = 0;
    for (int i = 0; i < 100; i++) {
      double[] millivolts = reading(random);
      Decided informed = decide(known, millivolts);
      Decided uninformed = decide(ResponsePrior.uninformed(), millivolts);
      with += informed.seconds() / 100;
      without += uninformed.seconds() / 100;
      wrongWith += informed.wrong() ? 1 : 0;
      wrongWithout += uninformed.wrong() ? 1 : 0;
    }
    assertThat(with).isLessThan(0.8 * without);
    assertThat(wrongWith).isLessThanOrEqualTo(3);
    assertThat(wrongWithout).isLessThanOrEqualTo(3);
  }

  @Test
  void whatAReadingHasToldIsLikelihoodsOfAllCurves() {
    ResponseSeen seen = seen(reading(new Random(6)));
    assertThat(seen.weights()).hasSize(CURVES).allMatch(weight -> weight >= 0);
    assertThat(seen.weights().stream().mapToDouble(Double::doubleValue).sum())
        .isCloseTo(1, within(1e-9));
    assertThat(seen.restMillivolts()).isCloseTo(150, within(0.5));
    assertThat(seen.rising()).isTrue();
    assertThat(seen.seconds()).isEqualTo(299);
    ForecastDetector early = RULE.detector(Traces.SLOPE, ResponsePrior.uninformed());
    early.accept(0, 1);
    assertThat(early.response()).isEmpty();
  }

  @Test
  void aPriorOfAnotherLevelOrDirectionIsNotUsed() {
    double[] millivolts = reading(new Random(8));
    List<Double> nothing = ResponsePrior.uninformed().levels().get(0).rising();
    List<Double> known = learnt(new Random(5)).levels().get(0).rising();
    double infinity = Double.POSITIVE_INFINITY;
    ResponsePrior falling =
        new ResponsePrior(List.of(new ResponsePrior.Level(infinity, nothing, known)), 0.07);
    ResponsePrior below =
        new ResponsePrior(
            List.of(
                new ResponsePrior.Level(0, known, known),
                new ResponsePrior.Level(infinity, nothing, nothing)),
            0.07);
    double uninformed = seconds(ResponsePrior.uninformed(), millivolts);
    assertThat(seconds(below, millivolts)).isEqualTo(uninformed);
    assertThat(seconds(falling, millivolts)).isCloseTo(uninformed, within(0.1 * uninformed));
    assertThat(seconds(ResponsePrior.alike(known), millivolts)).isLessThan(uninformed);
  }

  @Test
  void aPriorThatCannotBeIsRefused() {
    assertThatThrownBy(() -> ResponsePrior.alike(List.of(1.0)))
        .hasMessage("a prior weighs " + CURVES + " response curves, not 1");
    assertThatThrownBy(() -> ResponsePrior.alike(Collections.nCopies(CURVES, 0.0)))
        .hasMessage("a likelihood is above 0, not 0.0");
    assertThatThrownBy(() -> new ResponsePrior(List.of(), 0.07))
        .hasMessage("a prior has one level at least");
    ResponsePrior.Level level = ResponsePrior.uninformed().levels().get(0);
    assertThatThrownBy(() -> new ResponsePrior(List.of(level, level), 0.07))
        .hasMessage("the levels of a prior come by rising limits");
    assertThatThrownBy(() -> new ResponsePrior(List.of(level), -0.01))
        .hasMessage("a part is from 0 to 1, not -0.01");
  }
}
