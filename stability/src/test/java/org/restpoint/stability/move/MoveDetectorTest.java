package org.restpoint.stability.move;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class MoveDetectorTest {

  private static final OptionalDouble NONE = OptionalDouble.empty();
  private static final MoveSigns AIR = signs(NONE, OptionalDouble.of(20));
  private static final MoveSigns STEP = signs(OptionalDouble.of(5), NONE);

  private final List<Motion> seen = new ArrayList<>();
  private long second;

  private static MoveSigns signs(OptionalDouble step, OptionalDouble air) {
    return new MoveSigns(step, air, 3, 10, Duration.ofSeconds(5));
  }

  private void feed(MoveDetector detector, double... millivolts) {
    for (double value : millivolts) {
      seen.add(detector.accept(second++ * 1_000_000_000L, value));
    }
  }

  private static double[] still(double millivolts, int readings) {
    double[] all = new double[readings];
    Arrays.fill(all, millivolts);
    return all;
  }

  @Test
  void throughTheAirIntoACupOfTheSameConcentrationIsAMove() {
    MoveDetector detector = new MoveDetector(AIR);
    feed(detector, still(180, 10));
    feed(detector, 40, 260, -90, 310);
    feed(detector, still(180, 10));
    assertThat(seen.subList(0, 12)).containsOnly(Motion.NONE);
    assertThat(seen.get(13)).isEqualTo(Motion.OUT_OF_SOLUTION);
    assertThat(seen).containsOnlyOnce(Motion.MOVED_THROUGH_AIR);
    assertThat(seen.indexOf(Motion.MOVED_THROUGH_AIR)).isEqualTo(14 + 5);
  }

  @Test
  void theEndOfTheMetersRangeIsAirAndNoCalmSolution() {
    MoveDetector detector = new MoveDetector(AIR);
    feed(detector, still(180, 10));
    feed(detector, still(1999.9, 30));
    assertThat(seen).doesNotContain(Motion.MOVED_THROUGH_AIR);
    assertThat(seen.get(12)).isEqualTo(Motion.OUT_OF_SOLUTION);
    feed(detector, still(150, 6));
    assertThat(seen.get(seen.size() - 1)).isEqualTo(Motion.MOVED_THROUGH_AIR);
  }

  @Test
  void aStepIsAMoveOnlyWhereItIsASign() {
    for (MoveSigns signs : List.of(AIR, STEP)) {
      seen.clear();
      MoveDetector detector = new MoveDetector(signs);
      feed(detector, still(180, 10));
      feed(detector, still(150, 10));
      assertThat(seen)
          .filteredOn(motion -> motion != Motion.NONE)
          .isEqualTo(signs.equals(STEP) ? List.of(Motion.MOVED_BY_STEP) : List.of());
    }
  }

  @Test
  void aSpikeAndALevelThatComesBackAreNoMoves() {
    MoveDetector detector = new MoveDetector(STEP);
    feed(detector, still(180, 10));
    feed(detector, 300, 180, 180, 60, 60, 180);
    feed(detector, still(180, 10));
    feed(detector, 165, 150, 150, 155, 165, 172, 180);
    feed(detector, still(180, 10));
    assertThat(seen).containsOnly(Motion.NONE);
  }

  @Test
  void nothingIsToldBeforeThereIsALevelAndAfterItWasForgotten() {
    MoveDetector detector = new MoveDetector(AIR);
    feed(detector, 40, 260, -90, 310, 20);
    feed(detector, still(180, 10));
    detector.begin();
    feed(detector, 40, 260, -90, 310, 20);
    feed(detector, still(180, 10));
    assertThat(seen).containsOnly(Motion.NONE);
  }

  @Test
  void whatIsKnownToRestNeedsNoCalmBefore() {
    MoveDetector detector = new MoveDetector(AIR);
    detector.rested();
    feed(detector, 180, 180, 240);
    detector.rested();
    feed(detector, 40, 260, -90, 310);
    feed(detector, still(180, 10));
    assertThat(seen).contains(Motion.MOVED_THROUGH_AIR);
  }

  @Test
  void aTimeThatGoesBackBeginsAnew() {
    MoveDetector detector = new MoveDetector(AIR);
    feed(detector, still(180, 10));
    feed(detector, 40, 260, -90, 310, Double.NaN);
    second = 0;
    feed(detector, still(180, 10));
    assertThat(seen).doesNotContain(Motion.MOVED_THROUGH_AIR);
  }

  /** How often a move is told that was none, and is not told when it was one. */
  private static int[] counts(MoveSigns signs, boolean seenInAir, double interval) {
    int falsely = 0;
    int missed = 0;
    for (int seed = 0; seed < 300; seed++) {
      MadeMoves made = new MadeMoves(seed, interval).stay(90).stirred(5).stay(60);
      double step = (seed % 2 == 0 ? 1 : -1) * (seed % 3 == 0 ? 1 : 15 + seed % 40);
      double left = made.now();
      MadeMoves after = seenInAir ? made.move(step) : made.moveUnseen(step);
      List<Double> told = after.told(signs, 30);
      falsely += (int) told.stream().filter(at -> at < left).count();
      missed += told.stream().anyMatch(at -> at >= left) ? 0 : 1;
    }
    return new int[] {falsely, missed};
  }

  private static int bubblesTold(MoveSigns signs) {
    int told = 0;
    for (int seed = 0; seed < 300; seed++) {
      told += new MadeMoves(seed, 1).stay(60).bubble(40).stay(30).told(signs, 30).isEmpty() ? 0 : 1;
    }
    return told;
  }

  /** The figures stand in the README of this module: 300 made traces each, seeds 0 to 299. */
  @Test
  void throughTheAirNoMoveIsToldFalselyAndFewAreMissed() {
    assertThat(counts(AIR, true, 0.25)).containsExactly(0, 0);
    assertThat(counts(AIR, true, 1)).containsExactly(0, 18);
    assertThat(counts(AIR, true, 2)).containsExactly(0, 64);
    assertThat(bubblesTold(AIR)).isZero();
  }

  /** A hundred of the 300 moves are between cups that hold nearly the same. */
  @Test
  void byAStepAloneLikeCupsAreMissedAndABubbleIsTakenForAMove() {
    assertThat(counts(STEP, true, 1)).containsExactly(0, 100);
    assertThat(counts(STEP, false, 1)).containsExactly(0, 101);
    assertThat(bubblesTold(STEP)).isEqualTo(298);
  }

  @Test
  void settingsOutOfRangeAreRefused() {
    Duration calm = Duration.ofSeconds(5);
    for (Runnable made :
        List.<Runnable>of(
            () -> signs(NONE, NONE),
            () -> signs(OptionalDouble.of(0), NONE),
            () -> signs(NONE, OptionalDouble.of(Double.NaN)),
            () -> new MoveSigns(NONE, OptionalDouble.of(20), 1, 10, calm),
            () -> new MoveSigns(NONE, OptionalDouble.of(20), 3, 0, calm),
            () -> new MoveSigns(NONE, OptionalDouble.of(20), 3, 10, Duration.ZERO))) {
      assertThatThrownBy(made::run).isInstanceOf(IllegalArgumentException.class);
    }
  }
}
