package org.restpoint.stability.move;

/**
 * Whether the readings of a span lie close together. It takes no memory of them: a reading that
 * lies too far from those before it begins the span anew.
 */
final class Calm {

  /** Three readings lie close together by chance; with a slow meter the span holds no more. */
  private static final int LEAST_READINGS = 4;

  private final double withinMillivolts;
  private final long spanNanos;
  private long since;
  private int readings;
  private double low;
  private double high;

  Calm(MoveSigns signs) {
    withinMillivolts = signs.calmMillivolts();
    spanNanos = signs.calmFor().toNanos();
  }

  void forget() {
    readings = 0;
  }

  /** Takes a reading; whether it is calm with it. */
  boolean accept(long nanos, double millivolts) {
    double lowest = Math.min(low, millivolts);
    double highest = Math.max(high, millivolts);
    if (readings == 0 || highest - lowest > withinMillivolts) {
      since = nanos;
      readings = 0;
      lowest = millivolts;
      highest = millivolts;
    }
    readings++;
    low = lowest;
    high = highest;
    return readings >= LEAST_READINGS && nanos - since >= spanNanos;
  }
}
