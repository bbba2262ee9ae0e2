package org.restpoint.stability.settle1;

import org.restpoint.stability.rest.RestDetector;
import org.restpoint.stability.rest.RestProgress;
import org.restpoint.stability.rest.RestingPotential;

/**
 * Gives a detector the median of the last three readings in place of the last, at the last's time:
 * a spike of one reading never reaches it. The first two readings it waits for the third.
 */
final class MedianOfThree implements RestDetector {

  private final RestDetector detector;
  private double beforeLast;
  private double last;
  private long taken;

  MedianOfThree(RestDetector detector) {
    this.detector = detector;
  }

  @Override
  public boolean accept(long nanos, double millivolts) {
    double first = beforeLast;
    double second = last;
    beforeLast = second;
    last = millivolts;
    taken++;
    return taken >= 3 && detector.accept(nanos, of(first, second, millivolts));
  }

  /** The middle one. */
  static double of(double a, double b, double c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }

  @Override
  public RestProgress progress() {
    return detector.progress();
  }

  @Override
  public RestingPotential potential() {
    return detector.potential();
  }
}
