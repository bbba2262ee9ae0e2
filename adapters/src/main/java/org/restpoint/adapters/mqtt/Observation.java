package org.restpoint.adapters.mqtt;

import java.time.Instant;
import org.restpoint.stability.reading.Reading;

/**
 * What a message says of one moment.
 *
 * @param reading the values, stamped with the message's own time, or with that of its arrival where
 *     it has none
 * @param ownTime whether the time is the message's own
 */
public record Observation(Reading reading, boolean ownTime) {

  /** The time it is stamped with. */
  Instant time() {
    return reading.time();
  }

  boolean hasValuesOf(Reading other) {
    return reading.millivolts().equals(other.millivolts())
        && reading.celsius().equals(other.celsius());
  }

  Reading at(Instant time) {
    return new Reading(time, reading.millivolts(), reading.celsius());
  }
}
