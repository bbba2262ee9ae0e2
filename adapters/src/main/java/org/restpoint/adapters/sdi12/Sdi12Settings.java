package org.restpoint.adapters.sdi12;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalInt;
import org.restpoint.adapters.quantity.Meaning;

/**
 * How one probe is read from a sensor. Refuses, with an {@link IllegalArgumentException}, a number
 * without its place and a place without its number, a place outside 1 to {@link #MOST_VALUES},
 * fewer than 0 or more than {@link #MOST_RETRIES} retries, and a span that is not above zero.
 *
 * @param address which sensor
 * @param measurement what it is asked to measure
 * @param meaning what its numbers mean
 * @param potentialPlace which of the values is the potential, from 1; empty for a thermometer
 * @param temperaturePlace which of the values is the temperature, from 1; empty where none is read
 * @param every how often it is asked
 * @param answerWithin how long an answer to a command is waited for
 * @param retries how often a command is sent again that is not answered as it should
 * @param noDataAfter silence longer than this is told
 */
public record Sdi12Settings(
    SensorAddress address,
    Measurement measurement,
    Meaning meaning,
    OptionalInt potentialPlace,
    OptionalInt temperaturePlace,
    Duration every,
    Duration answerWithin,
    int retries,
    Duration noDataAfter) {

  /** The most values that a measurement can announce. */
  public static final int MOST_VALUES = 99;

  /** The most retries. */
  public static final int MOST_RETRIES = 10;

  public Sdi12Settings {
    requirePlace("potential", meaning.potential(), potentialPlace);
    requirePlace("temperature", meaning.temperature(), temperaturePlace);
    if (retries < 0 || retries > MOST_RETRIES) {
      throw new IllegalArgumentException("%d retries are not 0 to 10".formatted(retries));
    }
    if (answerWithin.isZero() || answerWithin.isNegative()) {
      throw new IllegalArgumentException(
          "the time for an answer %s is not above zero".formatted(answerWithin));
    }
  }

  private static void requirePlace(String what, Optional<?> scale, OptionalInt place) {
    if (scale.isPresent() != place.isPresent()) {
      throw new IllegalArgumentException(
          "the %s has a scale and a place, or neither".formatted(what));
    }
    if (place.isPresent() && (place.getAsInt() < 1 || place.getAsInt() > MOST_VALUES)) {
      throw new IllegalArgumentException(
          "value %d is not 1 to %d".formatted(place.getAsInt(), MOST_VALUES));
    }
  }
}
