package org.restpoint.stability.settle1;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.restpoint.stability.rest.ConsecutiveRule;

class CandidateTest {

  private static final Candidate FIVE_ALIKE = Candidate.of(new ConsecutiveRule(5, 0.1));

  /** Falls by 1 mV/s and stays: the fifth reading of 0 mV comes at 24 s. */
  @Test
  void itDecidesWithTheFirstReadingOnWhichTheRuleHolds() {
    Curve curve = Curves.showing(t -> Math.max(0, 20 - t));
    assertThat(FIVE_ALIKE.decide(curve))
        .isInstanceOfSatisfying(
            Decision.Settled.class,
            settled -> {
              assertThat(settled.seconds()).isEqualTo(24);
              assertThat(settled.errorMillivolts()).isCloseTo(0, within(1e-9));
            });
  }

  @Test
  void anErrorIsThePublishedPotentialLessTheTruth() {
    Curve curve = Curves.showing(t -> t < 100 ? -3 : 0);
    assertThat(FIVE_ALIKE.decide(curve))
        .isInstanceOfSatisfying(
            Decision.Settled.class,
            settled -> {
              assertThat(settled.seconds()).isEqualTo(4);
              assertThat(settled.errorMillivolts()).isCloseTo(-3, within(1e-9));
            });
  }

  @Test
  void aSawIsNeverAtRestAndCountsAs900Seconds() {
    Decision decision = FIVE_ALIKE.decide(Curves.showing(t -> t % 2));
    assertThat(decision).isEqualTo(new Decision.Never());
    assertThat(decision.seconds()).isEqualTo(900);
  }

  /** A spike every fourth reading; the first median stands at 2 s. */
  @Test
  void mediansOfThreeLetNoSingleSpikePass() {
    Curve curve = Curves.showing(t -> t % 4 == 0 ? 8 : 0);
    assertThat(FIVE_ALIKE.decide(curve)).isEqualTo(new Decision.Never());
    assertThat(FIVE_ALIKE.onMediansOfThree().decide(curve))
        .isInstanceOfSatisfying(
            Decision.Settled.class,
            settled -> {
              assertThat(settled.seconds()).isEqualTo(6);
              assertThat(settled.errorMillivolts()).isCloseTo(0, within(1e-9));
            });
    assertThat(FIVE_ALIKE.onMediansOfThree().name())
        .isEqualTo("consecutive 5 within 0.1 mV, medians of 3");
  }

  @Test
  void theMedianOfThreeIsTheMiddleOneInAnyOrder() {
    assertThat(MedianOfThree.of(1, 2, 3)).isEqualTo(2);
    assertThat(MedianOfThree.of(1, 3, 2)).isEqualTo(2);
    assertThat(MedianOfThree.of(2, 1, 3)).isEqualTo(2);
    assertThat(MedianOfThree.of(2, 3, 1)).isEqualTo(2);
    assertThat(MedianOfThree.of(3, 1, 2)).isEqualTo(2);
    assertThat(MedianOfThree.of(3, 2, 1)).isEqualTo(2);
    assertThat(MedianOfThree.of(2, 2, 1)).isEqualTo(2);
  }
}
