package org.restpoint.stability.rest;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Some readings in a row, summed up: number, means, sums of squares and products about the means,
 * extremes, and the longest pause between two of them.
 *
 * <p>Two runs of readings are joined by the update of T. F. Chan, G. H. Golub, R. J. LeVeque (The
 * American Statistician 37 (1983) 242, doi 10.1080/00031305.1983.10483115), which adds and never
 * takes away: {@code S = S₁ + S₂ + δ²·n₁·n₂/(n₁ + n₂)}, δ the distance of the means. Times are kept
 * in min since its own first reading, so that they are exact however late it is.
 */
final class Moments {

  private static final double NANOS_PER_MINUTE = 60e9;

  /**
   * A thousand times the rounding of a double, as a share; noise of 1 µV on a ramp of 1 V is above.
   */
  private static final double ROUNDING = 1e-13;

  private long count;
  private long firstNanos;
  private long lastNanos;
  private long longestPauseNanos;
  private double meanMinutes;
  private double meanMillivolts;
  private double minutesSquared;
  private double minutesMillivolts;
  private double millivoltsSquared;
  private double lowest;
  private double highest;

  void clear() {
    count = 0;
  }

  /** Becomes one reading. */
  void set(long nanos, double millivolts) {
    count = 1;
    firstNanos = nanos;
    lastNanos = nanos;
    longestPauseNanos = 0;
    meanMinutes = 0;
    meanMillivolts = millivolts;
    minutesSquared = 0;
    minutesMillivolts = 0;
    millivoltsSquared = 0;
    lowest = millivolts;
    highest = millivolts;
  }

  /** Becomes the same as others. */
  void set(Moments other) {
    count = other.count;
    firstNanos = other.firstNanos;
    lastNanos = other.lastNanos;
    longestPauseNanos = other.longestPauseNanos;
    meanMinutes = other.meanMinutes;
    meanMillivolts = other.meanMillivolts;
    minutesSquared = other.minutesSquared;
    minutesMillivolts = other.minutesMillivolts;
    millivoltsSquared = other.millivoltsSquared;
    lowest = other.lowest;
    highest = other.highest;
  }

  /** Takes in readings that came after its own. */
  void append(Moments later) {
    if (later.count == 0) {
      return;
    }
    if (count == 0) {
      set(later);
      return;
    }
    double share = (double) later.count / (count + later.count);
    double weight = count * share;
    double minutes = minutesUntil(later.firstNanos) + later.meanMinutes - meanMinutes;
    double millivolts = later.meanMillivolts - meanMillivolts;
    minutesSquared += later.minutesSquared + minutes * minutes * weight;
    minutesMillivolts += later.minutesMillivolts + minutes * millivolts * weight;
    millivoltsSquared += later.millivoltsSquared + millivolts * millivolts * weight;
    meanMinutes += minutes * share;
    meanMillivolts += millivolts * share;
    long pause = Math.max(later.longestPauseNanos, later.firstNanos - lastNanos);
    longestPauseNanos = Math.max(longestPauseNanos, pause);
    lastNanos = later.lastNanos;
    lowest = Math.min(lowest, later.lowest);
    highest = Math.max(highest, later.highest);
    count += later.count;
  }

  private double minutesUntil(long nanos) {
    return (nanos - firstNanos) / NANOS_PER_MINUTE;
  }

  long count() {
    return count;
  }

  long firstNanos() {
    return firstNanos;
  }

  long spanNanos() {
    return lastNanos - firstNanos;
  }

  double spanMinutes() {
    return minutesUntil(lastNanos);
  }

  long longestPauseNanos() {
    return longestPauseNanos;
  }

  /** Mean of the times, in min since the first reading. */
  double middleMinutes() {
    return meanMinutes;
  }

  /** Mean of the times, in ns. */
  double middleNanos() {
    return firstNanos + meanMinutes * NANOS_PER_MINUTE;
  }

  long lastNanos() {
    return lastNanos;
  }

  double meanMillivolts() {
    return meanMillivolts;
  }

  double spread() {
    return highest - lowest;
  }

  /** Variance of the mean; needs two readings. */
  double varianceOfMean() {
    return millivoltsSquared / (count - 1) / count;
  }

  /** Whether a line goes through them at all: two instants. */
  boolean hasSlope() {
    return minutesSquared > 0;
  }

  /** In mV/min; needs {@link #hasSlope}. */
  double slope() {
    return minutesMillivolts / minutesSquared;
  }

  /**
   * Variance about the line; needs {@link #hasSlope} and three readings. What is left of a straight
   * ramp when two sums cancel is rounding, and none.
   */
  private double varianceAboutLine() {
    double explained = minutesMillivolts * minutesMillivolts / minutesSquared;
    double left = millivoltsSquared - explained;
    return left > ROUNDING * millivoltsSquared ? left / (count - 2) : 0;
  }

  /** Standard error of the slope, in mV/min; needs {@link #hasSlope} and three readings. */
  double slopeStandardError() {
    return Math.sqrt(varianceAboutLine() / minutesSquared);
  }

  /** The line's value so many min after the first reading; needs {@link #hasSlope}. */
  double lineAt(double minutes) {
    return meanMillivolts + slope() * (minutes - meanMinutes);
  }

  /** Variance of {@link #lineAt}; needs three readings as well. */
  double varianceOfLineAt(double minutes) {
    double off = minutes - meanMinutes;
    return varianceAboutLine() * (1.0 / count + off * off / minutesSquared);
  }

  Optional<Drift> drift() {
    if (!hasSlope()) {
      return Optional.empty();
    }
    OptionalDouble error =
        count > 2 ? OptionalDouble.of(slopeStandardError()) : OptionalDouble.empty();
    return Optional.of(new Drift(slope(), error));
  }
}
