package org.restpoint.stability.rest;

/**
 * The latest readings, summed up: so many at least, and reaching back a span at least.
 *
 * <p>The window begins with the last reading that is as old as the span, or older, so that it
 * covers the span whatever the sampling interval; after a pause that reading stands before the
 * pause. It holds all readings since, and further ones back until there are as many as asked for.
 *
 * <p>Method: a queue of two stacks. The readings since the last turn-over are summed up as they
 * come; of those before, each place holds the sum from itself to the turn-over, so the oldest
 * leaves without being subtracted. Nothing is ever subtracted, hence a reading leaves no rounding
 * error behind it, however large it was and however many millions went before. A reading costs the
 * same on average whatever the window is.
 *
 * <p>Bounds: {@value #LEAST_PLACES} places or the number of readings asked for, whichever is more,
 * about 110 bytes each, taken at the beginning. A window of more readings than places joins
 * neighbours two and two, and from then on a place takes more readings; extremes, means and sums
 * stay exact, and the window reaches back further than asked for by one place at most, which is
 * 1/512 of the span or less.
 */
final class SlidingWindow {

  static final int LEAST_PLACES = 1024;

  private final int leastReadings;
  private final long spanNanos;
  private final long longestPlaceNanos;
  private final Moments[] places;
  private final Moments sinceTurn = new Moments();
  private final Moments window = new Moments();
  private final Moments reading = new Moments();
  private int oldest;
  private int size;
  private int turned;
  private long mostInPlace = 1;
  private long taken;
  private double latestMillivolts;

  /**
   * A window without readings.
   *
   * @param leastReadings 1 or more
   * @param spanNanos 0 or more
   */
  SlidingWindow(int leastReadings, long spanNanos) {
    this.leastReadings = leastReadings;
    this.spanNanos = spanNanos;
    this.longestPlaceNanos = spanNanos / (LEAST_PLACES / 2);
    this.places = new Moments[Math.max(LEAST_PLACES, leastReadings + 1)];
    for (int i = 0; i < places.length; i++) {
      places[i] = new Moments();
    }
  }

  /** Takes a reading, not older than the one before it. */
  void take(long nanos, double millivolts) {
    taken++;
    latestMillivolts = millivolts;
    reading.set(nanos, millivolts);
    if (newestTakes(nanos)) {
      places[at(size - 1)].append(reading);
    } else {
      if (size == places.length) {
        joinNeighbours();
      }
      places[at(size)].set(reading);
      size++;
    }
    sinceTurn.append(reading);
    leave(nanos - spanNanos);
    if (turned == 0) {
      window.set(sinceTurn);
    } else {
      window.set(places[oldest]);
      window.append(sinceTurn);
    }
  }

  private boolean newestTakes(long nanos) {
    if (mostInPlace == 1 || size == turned) {
      return false;
    }
    Moments newest = places[at(size - 1)];
    return newest.count() < mostInPlace && nanos - newest.firstNanos() < longestPlaceNanos;
  }

  /** Lets go what the window needs no more. */
  private void leave(long from) {
    while (size > 1 && places[at(1)].firstNanos() <= from && withoutOldest() >= leastReadings) {
      if (turned == 0) {
        turnOver();
      }
      oldest = at(1);
      size--;
      turned--;
    }
  }

  private long withoutOldest() {
    long since = sinceTurn.count();
    if (turned == 0) {
      return since - places[oldest].count();
    }
    return turned == 1 ? since : since + places[at(1)].count();
  }

  private void turnOver() {
    for (int i = 0; i < turned; i++) {
      places[at(i)].append(sinceTurn);
    }
    for (int i = size - 2; i >= turned; i--) {
      places[at(i)].append(places[at(i + 1)]);
    }
    turned = size;
    sinceTurn.clear();
  }

  /** Halves the places: each sum to the turn-over stays right when every second one goes. */
  private void joinNeighbours() {
    turnOver();
    int half = (size + 1) / 2;
    for (int i = 1; i < half; i++) {
      places[at(i)].set(places[at(2 * i)]);
    }
    size = half;
    turned = half;
    mostInPlace *= 2;
  }

  private int at(int offset) {
    int index = oldest + offset;
    return index < places.length ? index : index - places.length;
  }

  /** The readings in the window, summed up; changes with the next reading. */
  Moments readings() {
    return window;
  }

  /** Whether it holds as many readings, and reaches back as far, as asked for. */
  boolean isFull() {
    return window.count() >= leastReadings && window.spanNanos() >= spanNanos;
  }

  /** All readings ever taken. */
  long taken() {
    return taken;
  }

  double latestMillivolts() {
    return latestMillivolts;
  }
}
