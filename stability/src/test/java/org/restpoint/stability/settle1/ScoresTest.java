package org.restpoint.stability.settle1;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.rest.ConsecutiveRule;

class ScoresTest {

  private static Decision settled(double seconds, double error, double uncertainty) {
    return new Decision.Settled(seconds, error, uncertainty);
  }

  /** Errors 0.3, −1.2 and 0.6 mV, and one that never settled. */
  @Test
  void sharesAreOfAllAndErrorsOfTheSettled() {
    Scores scores =
        Scores.of(
            List.of(
                settled(10, 0.3, 0.1),
                settled(20, -1.2, 0.6),
                new Decision.Never(),
                settled(30, 0.6, 0.5)));
    assertThat(scores.curves()).isEqualTo(4);
    assertThat(scores.never()).isEqualTo(0.25);
    assertThat(scores.overOneMillivolt()).isEqualTo(0.25);
    assertThat(scores.overHalfMillivolt()).isEqualTo(0.5);
    assertThat(scores.bias()).isCloseTo(-0.1, within(1e-12));
    assertThat(scores.rootMeanSquare()).isCloseTo(Math.sqrt(1.89 / 3), within(1e-12));
    assertThat(scores.error95()).isEqualTo(1.2);
    assertThat(scores.within2u()).isCloseTo(2.0 / 3, within(1e-12));
    assertThat(scores.meanSeconds()).isEqualTo((10 + 20 + 30 + 900) / 4.0);
    assertThat(scores.medianSeconds()).isEqualTo(20);
    assertThat(scores.seconds95()).isEqualTo(900);
  }

  @Test
  void anErrorOfExactlyTheLimitIsNoFalseSettle() {
    Scores scores = Scores.of(List.of(settled(1, 1, 1), settled(1, -0.5, 1)));
    assertThat(scores.overOneMillivolt()).isZero();
    assertThat(scores.overHalfMillivolt()).isEqualTo(0.5);
  }

  /** Of 1 … 100 the 95th percentile is the 95th. */
  @Test
  void quantilesAreByNearestRank() {
    List<Decision> decisions =
        IntStream.rangeClosed(1, 100).mapToObj(i -> settled(i, i / 100.0, 1)).toList();
    Scores scores = Scores.of(decisions);
    assertThat(scores.medianSeconds()).isEqualTo(50);
    assertThat(scores.seconds95()).isEqualTo(95);
    assertThat(scores.error95()).isEqualTo(0.95);
  }

  @Test
  void whereNoneSettledThereAreNoErrors() {
    Scores scores = Scores.of(Collections.nCopies(3, new Decision.Never()));
    assertThat(scores.never()).isEqualTo(1);
    assertThat(scores.overOneMillivolt()).isZero();
    assertThat(scores.rootMeanSquare()).isZero();
    assertThat(scores.meanSeconds()).isEqualTo(900);
    assertThatThrownBy(() -> Scores.of(List.of())).isInstanceOf(IllegalArgumentException.class);
  }

  /** A plateau 3 mV off its rest, a saw, and one that is where it will rest. */
  @Test
  void aRuleIsScoredOnCurves() {
    List<Curve> curves =
        List.of(
            Curves.showing(t -> t < 100 ? 3 : 0),
            Curves.showing(t -> t % 2),
            Curves.showing(t -> 0));
    Scores scores = Scores.of(Candidate.of(new ConsecutiveRule(5, 0.1)), curves);
    assertThat(scores.overOneMillivolt()).isCloseTo(1.0 / 3, within(1e-12));
    assertThat(scores.never()).isCloseTo(1.0 / 3, within(1e-12));
    assertThat(scores.meanSeconds()).isCloseTo((4 + 900 + 4) / 3.0, within(1e-12));
  }
}
