package org.restpoint.stability.rest;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * {@link ConsecutiveRule} at work.
 *
 * <p>The last n readings stand in a ring; two monotonic queues of places in it keep their largest
 * and their smallest (D. Lemire, Nordic Journal of Computing 13 (2006) 328), so a reading costs the
 * same whatever n is. State: 24·n bytes in four arrays of fixed length.
 */
final class ConsecutiveDetector implements RestDetector {

  /**
   * Two readings printed 0.1 mV apart differ by 0.1 mV and a rounding error of the last bit; this
   * keeps them within 0.1 mV. Far below any converter's step, far above the rounding of a
   * potential.
   */
  static final double ROUNDING_MILLIVOLTS = 1e-9;

  private static final double NANOS_PER_MINUTE = 60e9;

  private final int length;
  private final double within;
  private final double[] window;
  private final long[] nanos;
  private final Extremes highest;
  private final Extremes lowest;
  private int next;
  private long taken;

  ConsecutiveDetector(int length, double within) {
    this.length = length;
    this.within = within;
    this.window = new double[length];
    this.nanos = new long[length];
    this.highest = new Extremes(window, 1);
    this.lowest = new Extremes(window, -1);
  }

  @Override
  public boolean accept(long time, double millivolts) {
    window[next] = millivolts;
    nanos[next] = time;
    highest.take(next);
    lowest.take(next);
    next = next + 1 == length ? 0 : next + 1;
    taken++;
    return atRest();
  }

  private boolean atRest() {
    return taken >= length && spread() <= within + ROUNDING_MILLIVOLTS;
  }

  private double spread() {
    return highest.value() - lowest.value();
  }

  @Override
  public RestProgress progress() {
    if (taken == 0) {
      throw new IllegalStateException("no reading yet");
    }
    double latest = window[next == 0 ? length - 1 : next - 1];
    Optional<Drift> drift = drift();
    return new RestProgress(
        atRest(), taken, latest, spread(), drift, creeping(drift), Optional.empty(), List.of());
  }

  @Override
  public RestingPotential potential() {
    if (!atRest()) {
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
    Optional<Drift> drift = drift();
    return new RestingPotential(mean, uncertainty, false, spread(), drift, creeping(drift));
  }

  private boolean creeping(Optional<Drift> drift) {
    return drift.isPresent() && drift.get().creeps(within);
  }

  private Optional<Drift> drift() {
    int n = (int) Math.min(taken, length);
    double meanMinutes = 0;
    double meanMillivolts = 0;
    for (int i = 0; i < n; i++) {
      meanMinutes += minutes(i) / n;
      meanMillivolts += (window[i] - window[0]) / n;
    }
    double sxx = 0;
    double sxy = 0;
    for (int i = 0; i < n; i++) {
      double minutes = minutes(i) - meanMinutes;
      sxx += minutes * minutes;
      sxy += minutes * (window[i] - window[0] - meanMillivolts);
    }
    if (!(sxx > 0)) {
      return Optional.empty();
    }
    double slope = sxy / sxx;
    if (n < 3) {
      return Optional.of(new Drift(slope, OptionalDouble.empty()));
    }
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double off = window[i] - window[0] - meanMillivolts - slope * (minutes(i) - meanMinutes);
      squares += off * off;
    }
    return Optional.of(new Drift(slope, OptionalDouble.of(Math.sqrt(squares / (n - 2) / sxx))));
  }

  /** The time of a place in the ring, in min since that of the first place. */
  private double minutes(int place) {
    return (nanos[place] - nanos[0]) / NANOS_PER_MINUTE;
  }

  /**
   * The extreme of the ring: a queue of places, oldest first, each holding a more extreme reading
   * than the next.
   */
  private static final class Extremes {

    private final double[] window;
    private final int[] queue;
    private final int sign;
    private int head;
    private int size;

    Extremes(double[] window, int sign) {
      this.window = window;
      this.queue = new int[window.length];
      this.sign = sign;
    }

    /** Takes the reading just written at a place; the one that stood there before has left. */
    void take(int place) {
      if (size > 0 && queue[head] == place) {
        head = head + 1 == queue.length ? 0 : head + 1;
        size--;
      }
      double value = sign * window[place];
      while (size > 0 && sign * window[queue[at(size - 1)]] <= value) {
        size--;
      }
      queue[at(size)] = place;
      size++;
    }

    private int at(int offset) {
      int index = head + offset;
      return index < queue.length ? index : index - queue.length;
    }

    double value() {
      return window[queue[head]];
    }
  }
}
