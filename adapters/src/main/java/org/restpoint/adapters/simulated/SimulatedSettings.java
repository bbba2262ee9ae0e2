package org.restpoint.adapters.simulated;

import java.time.Duration;

/**
 * What a simulated link sends. Refuses, with an {@link IllegalArgumentException}, an interval that
 * is not a whole number of milliseconds above 0 and a speed that is not above 0.
 *
 * @param electrode what the electrode is like
 * @param first the beaker it sits in at the start, at rest
 * @param interval the time between two readings, as they are stamped
 * @param speed how much faster than real time they are sent; 1 for real time
 */
public record SimulatedSettings(
    ElectrodeTraits electrode, Beaker first, Duration interval, double speed) {

  public SimulatedSettings {
    if (interval.toMillis() < 1 || !interval.equals(Duration.ofMillis(interval.toMillis()))) {
      throw new IllegalArgumentException(
          "the interval is not a whole number of milliseconds above 0");
    }
    if (!(speed > 0) || speed == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException("the speed is not above 0 and finite");
    }
  }
}
