package org.restpoint.stability.settle1;

/** The readings of a curve, one a second from t = 0, in mV. Does not change. */
public final class Trace {

  private final double[] millivolts;

  /** Takes a copy. */
  public Trace(double... millivolts) {
    this.millivolts = millivolts.clone();
  }

  /** How many readings, and s. */
  public int seconds() {
    return millivolts.length;
  }

  /** The reading of a second, 0 to less than {@link #seconds}, in mV. */
  public double millivoltsAt(int second) {
    return millivolts[second];
  }

  /** A copy of them all. */
  public double[] millivolts() {
    return millivolts.clone();
  }
}
