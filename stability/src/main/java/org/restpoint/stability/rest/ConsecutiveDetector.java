package org.restpoint.stability.rest;

import java.util.List;
import java.util.Optional;

/**
 * {@link ConsecutiveRule} at work.
 *
 * <p>The last n readings stand in a ring; two monotonic queues of places in it keep their largest
 * and their smallest (D. Lemire, Nordic Journal of Computing 13 (2006) 328), so a reading costs the
 * same whatever n is. What stood in the window n to 2n readings before is kept summed up, to tell
 * an approach that slows down from a creep. State: 24·n bytes in four arrays of fixed length.
 */
final class ConsecutiveDetector implements RestDetector {

  /**
   * Two readings printed 0.1 mV apart differ by 0.1 mV and a rounding error of the last bit; this
   * keeps them within 0.1 mV. Far below any converter's step, far above the rounding of a
   * potential.
   */
  static final double ROUNDING_MILLIVOLTS = 1e-9;

  private final int length;
  private final double within;
  private final double[] window;
  private final long[] nanos;
  private final Extremes highest;
  private final Extremes lowest;
  private final Moments before = new Moments();
  private final Moments candidate = new Moments();
  private final Moments whole = new Moments();
  private final Moments reading = new Moments();
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
    if (taken % length == 0) {
      before.set(candidate);
      candidate.set(summed());
    }
    return atRest();
  }

  /** The readings in the window, oldest first. */
  private Moments summed() {
    whole.clear();
    int n = (int) Math.min(taken, length);
    for (int i = 0; i < n; i++) {
      int place = next - n + i;
      int inRing = place < 0 ? place + length : place;
      reading.set(nanos[inRing], window[inRing]);
      whole.append(reading);
    }
    return whole;
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
    Moments seen = summed();
    return new RestProgress(
        atRest(),
        taken,
        latest,
        spread(),
        seen.drift(),
        Creep.leaves(before, seen, within),
        Optional.empty(),
        List.of());
  }

  @Override
  public RestingPotential potential() {
    if (!atRest()) {
      throw new IllegalStateException("not at rest");
    }
    Moments seen = summed();
    double uncertainty = Math.sqrt(seen.varianceOfMean() + within * within / 3);
    return new RestingPotential(
        seen.meanMillivolts(),
        uncertainty,
        false,
        spread(),
        seen.drift(),
        Creep.leaves(before, seen, within));
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
