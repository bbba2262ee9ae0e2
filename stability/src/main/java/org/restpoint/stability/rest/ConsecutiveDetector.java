package org.restpoint.stability.rest;

import java.util.OptionalDouble;

/**
 * {@link ConsecutiveRule} at work.
 *
 * <p>The largest and the smallest of the last n readings are kept in two monotonic queues (D.
 * Lemire, Nordic Journal of Computing 13 (2006) 328), so a reading costs the same whatever n is.
 * State: 32·n bytes in four arrays of fixed length.
 */
final class ConsecutiveDetector implements RestDetector {

  /**
   * Two readings printed 0.1 mV apart differ by 0.1 mV and a rounding error of the last bit; this
   * keeps them within 0.1 mV. Far below any converter's step, far above the rounding of a
   * potential.
   */
  private static final double ROUNDING_MILLIVOLTS = 1e-9;

  private static final double NANOS_PER_MINUTE = 60e9;

  private final int length;
  private final double within;
  private final double[] window;
  private final long[] nanos;
  private final Extremes highest;
  private final Extremes lowest;
  private long taken;

  ConsecutiveDetector(int length, double within) {
    this.length = length;
    this.within = within;
    this.window = new double[length];
    this.nanos = new long[length];
    this.highest = new Extremes(length, 1);
    this.lowest = new Extremes(length, -1);
  }

  @Override
  public boolean accept(long time, double millivolts) {
    int slot = (int) (taken % length);
    window[slot] = millivolts;
    nanos[slot] = time;
    highest.add(taken, window);
    lowest.add(taken, window);
    taken++;
    return taken >= length && spread() <= within + ROUNDING_MILLIVOLTS;
  }

  private double spread() {
    return highest.value(window) - lowest.value(window);
  }

  @Override
  public RestProgress progress() {
    if (taken == 0) {
      throw new IllegalStateException("no reading yet");
    }
    return new RestProgress(
        taken, window[(int) ((taken - 1) % length)], spread(), driftMillivoltsPerMinute());
  }

  @Override
  public RestingPotential potential() {
    if (taken < length) {
      throw new IllegalStateException("not at rest");
    }
    double origin = window[0];
    double sum = 0;
    for (double value : window) {
      sum += value - origin;
    }
    double mean = origin + sum / length;
    double squares = 0;
    for (double value : window) {
      squares += (value - mean) * (value - mean);
    }
    double varianceOfMean = squares / (length - 1) / length;
    double uncertainty = Math.sqrt(varianceOfMean + within * within / 3);
    return new RestingPotential(mean, uncertainty, false, spread());
  }

  private OptionalDouble driftMillivoltsPerMinute() {
    int n = (int) Math.min(taken, length);
    long first = nanos[(int) ((taken - n) % length)];
    double meanMinutes = 0;
    double meanMillivolts = 0;
    for (int i = 0; i < n; i++) {
      meanMinutes += (nanos[i] - first) / NANOS_PER_MINUTE / n;
      meanMillivolts += window[i] / n;
    }
    double sxx = 0;
    double sxy = 0;
    for (int i = 0; i < n; i++) {
      double minutes = (nanos[i] - first) / NANOS_PER_MINUTE - meanMinutes;
      sxx += minutes * minutes;
      sxy += minutes * (window[i] - meanMillivolts);
    }
    return sxx > 0 ? OptionalDouble.of(sxy / sxx) : OptionalDouble.empty();
  }

  /** The extreme of a sliding window: a queue of candidates, each more extreme than the next. */
  private static final class Extremes {

    private final long[] places;
    private final int sign;
    private long head;
    private long tail;

    Extremes(int length, int sign) {
      this.places = new long[length];
      this.sign = sign;
    }

    void add(long place, double[] window) {
      int length = places.length;
      if (head < tail && places[(int) (head % length)] <= place - length) {
        head++;
      }
      double value = sign * window[(int) (place % length)];
      while (head < tail) {
        long last = places[(int) ((tail - 1) % length)];
        if (sign * window[(int) (last % length)] > value) {
          break;
        }
        tail--;
      }
      places[(int) (tail % length)] = place;
      tail++;
    }

    double value(double[] window) {
      return window[(int) (places[(int) (head % places.length)] % places.length)];
    }
  }
}
