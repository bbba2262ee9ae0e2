package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CreepTest {

  private static final double SECONDS_PER_MINUTE = 60;
  private static final double SLOPE = -59.16;

  /** The readings of some seconds of a potential. */
  private static Moments readings(DoubleUnaryOperator millivoltsAtSecond, int from, int to) {
    Moments sum = new Moments();
    Moments one = new Moments();
    for (int second = from; second < to; second++) {
      one.set(second * 1_000_000_000L, millivoltsAtSecond.applyAsDouble(second));
      sum.append(one);
    }
    return sum;
  }

  private static DoubleUnaryOperator exponential(double amplitude, double timeConstantSeconds) {
    return second -> 80 + amplitude * Math.exp(-second / timeConstantSeconds);
  }

  @Test
  void aStraightDriftIsProjectedStraightForFiveMinutes() {
    DoubleUnaryOperator straight = second -> 80 - 0.01 * second;

    double movement = Creep.movementMillivolts(new Moments(), readings(straight, 50, 60));
    double withPast =
        Creep.movementMillivolts(readings(straight, 20, 40), readings(straight, 50, 60));

    assertThat(movement).isCloseTo(0.01 * 5 * SECONDS_PER_MINUTE, within(1e-6));
    assertThat(withPast).isCloseTo(movement, within(1e-4));
  }

  /** What is left of an exponential at the window's end, less what is left five minutes later. */
  @ParameterizedTest
  @ValueSource(doubles = {8, 30, 120, 600})
  void anApproachThatSlowsDownIsProjectedAsFarAsItGoes(double timeConstant) {
    DoubleUnaryOperator approach = exponential(-20, timeConstant);
    int end = (int) (3 * timeConstant);

    double projected =
        Creep.movementMillivolts(
            readings(approach, end - 20, end - 10), readings(approach, end - 10, end));
    double real = approach.applyAsDouble(end - 1 + 300) - approach.applyAsDouble(end - 1);

    assertThat(projected / real).isCloseTo(1, within(0.1));
  }

  @Test
  void anElectrodeThatHasComeToRestIsNotCalledCreepingAndASlowOneIs() {
    DoubleUnaryOperator fast = exponential(-60, 8);
    DoubleUnaryOperator slow = exponential(-2, 120);

    assertThat(Creep.leaves(readings(fast, 40, 50), readings(fast, 50, 60), 0.1)).isFalse();
    assertThat(Creep.leaves(readings(slow, 240, 250), readings(slow, 250, 260), 0.1)).isTrue();
  }

  @Test
  void anElectrodeThatSpeedsUpOrTurnsIsProjectedStraight() {
    DoubleUnaryOperator faster = second -> 80 + 1e-4 * second * second;
    Moments window = readings(faster, 50, 60);

    double movement = Creep.movementMillivolts(readings(faster, 30, 40), window);

    assertThat(movement).isCloseTo(Math.abs(window.slope()) * 5, within(1e-9));
    assertThat(Creep.movementMillivolts(readings(second -> 80 - second, 30, 40), window))
        .isEqualTo(movement);
  }

  @Test
  void fewerThanThreeReadingsDoNotCreep() {
    assertThat(Creep.leaves(new Moments(), readings(second -> second, 0, 2), 0.1)).isFalse();
    assertThat(Creep.leaves(new Moments(), new Moments(), 0.1)).isFalse();
  }

  /** 200 noisy approaches, each at the moment that ten readings lie within 0.1 mV. */
  @Test
  void fewHealthyElectrodesAreFlaggedAtTheMomentTheyComeToRest() {
    Random random = new Random(7);
    int flagged = 0;
    for (int i = 0; i < 200; i++) {
      RestDetector detector = new ConsecutiveRule(10, 0.1).detector(SLOPE);
      DoubleUnaryOperator approach = exponential(-60, 8);
      for (int second = 0;
          !detector.accept(
              second * 1_000_000_000L,
              approach.applyAsDouble(second) + 0.02 * random.nextGaussian());
          second++) {
        assertThat(second).isLessThan(600);
      }
      flagged += detector.potential().creeping() ? 1 : 0;
    }
    assertThat(flagged).isLessThan(60);
  }
}
