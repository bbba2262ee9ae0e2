package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.settle1.Candidate;
import org.restpoint.stability.settle1.Curve;
import org.restpoint.stability.settle1.Scores;
import org.restpoint.stability.settle1.Settle1;

/** How often the forecast is right, on invented noise with a fixed seed. */
class ForecastNoiseTest {

  private static final double REST = 150;

  /** What became of some traces. */
  private record Seen(int settled, int within2u, int early, double meanSquare) {}

  /**
   * Film diffusion with a time constant of 12 s under white noise and an autoregression.
   *
   * @param phi the autoregression's coefficient
   */
  private static Seen see(double white, double correlated, double phi) {
    Random random = new Random(7);
    int settled = 0;
    int right = 0;
    int early = 0;
    double squares = 0;
    for (int trace = 0; trace < 100; trace++) {
      RestDetector detector = new ForecastRule(1).detector(Traces.SLOPE);
      double walk = correlated * random.nextGaussian();
      boolean rest = false;
      for (int t = 0; t < 600 && !rest; t++) {
        double clean = REST + Traces.SLOPE * Math.log10(1 - 0.9 * Math.exp(-t / 12.0));
        rest = detector.accept(t * Traces.SECOND, clean + walk + white * random.nextGaussian());
        if (rest) {
          RestingPotential potential = detector.potential();
          double error = potential.millivolts() - REST;
          settled++;
          early += t < 100 ? 1 : 0;
          right += Math.abs(error) <= 2 * potential.standardUncertaintyMillivolts() ? 1 : 0;
          squares += error * error;
        }
        walk = phi * walk + correlated * Math.sqrt(1 - phi * phi) * random.nextGaussian();
      }
    }
    return new Seen(settled, right, early, squares / settled);
  }

  @Test
  void underWhiteNoiseItIsSoonAndRight() {
    Seen seen = see(0.1, 0, 0);
    assertThat(seen.settled()).isEqualTo(100);
    assertThat(seen.within2u()).isGreaterThanOrEqualTo(95);
    assertThat(seen.early()).isGreaterThan(50);
    assertThat(Math.sqrt(seen.meanSquare())).isLessThan(0.4);
  }

  @Test
  void noiseThatHangsTogetherMakesItWaitAndNotWrong() {
    Seen white = see(0.2, 0, 0);
    Seen correlated = see(0.02, 0.2, 0.9);
    assertThat(correlated.settled()).isEqualTo(100);
    assertThat(correlated.within2u()).isGreaterThanOrEqualTo(95);
    assertThat(correlated.early()).isLessThan(white.early());
    assertThat(Math.sqrt(correlated.meanSquare())).isLessThan(0.4);
  }

  /** The bounds are loose: 300 curves settle the share of false ones to one in a hundred. */
  @Test
  void onTheCurvesThatSettingsAreChosenOnItIsSoonerThanAnyOtherRuleAndSeldomWrong() {
    List<Curve> curves = Settle1.curves(Settle1.TUNING_SEED, 300);
    Scores scores = Scores.of(Candidate.of(new ForecastRule(1)), curves);
    assertThat(scores.overOneMillivolt()).isLessThan(0.05);
    assertThat(scores.never()).isLessThan(0.03);
    assertThat(scores.rootMeanSquare()).isLessThan(0.5);
    assertThat(scores.meanSeconds()).isLessThan(130);
    assertThat(scores.within2u()).isGreaterThan(0.94);
  }
}
