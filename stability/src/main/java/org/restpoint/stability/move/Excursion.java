package org.restpoint.stability.move;

/** What readings off the level look like: an answer to a solution, or an input held by nothing. */
final class Excursion {

  /**
   * A spike turns back once, and so does a bubble that goes again; two turns in one excursion are
   * neither. An electrode that answers to a solution does not turn back at all but for its noise.
   */
  private static final int TURNS_IN_AIR = 2;

  private final MoveSigns signs;
  private final double least;
  private double extreme;
  private int direction;
  private int turns;
  private int beyond;
  private int readings;

  /** Begins at the level that is left. */
  Excursion(MoveSigns signs, double levelMillivolts) {
    this.signs = signs;
    this.least = signs.airMillivolts().orElse(Double.POSITIVE_INFINITY);
    this.extreme = levelMillivolts;
  }

  void add(double millivolts) {
    readings++;
    if (!MoveDetector.isOfSolution(millivolts)) {
      beyond++;
    }
    double onwards = (millivolts - extreme) * direction;
    if (onwards > 0) {
      extreme = millivolts;
    } else if (Math.abs(millivolts - extreme) >= least) {
      turns += direction == 0 ? 0 : 1;
      direction = millivolts > extreme ? 1 : -1;
      extreme = millivolts;
    }
  }

  /** Whether so many readings lie off the level that it is no spike. */
  boolean isDeparture() {
    return readings >= signs.readings();
  }

  /** Whether nothing held the input: it turned back and forth, or left what a solution gives. */
  boolean isInAir() {
    return signs.airMillivolts().isPresent()
        && (turns >= TURNS_IN_AIR || beyond >= signs.readings());
  }
}
