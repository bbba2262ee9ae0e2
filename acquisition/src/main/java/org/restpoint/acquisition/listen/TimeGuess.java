package org.restpoint.acquisition.listen;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.Map;
import java.util.Optional;
import org.restpoint.acquisition.listen.Payloads.Leaf;

/**
 * Finds the time that a JSON message brings: a text in ISO 8601 with a zone, or a number of seconds
 * or milliseconds from 1970, that is close to the arrival.
 *
 * @param pointer where it stands
 * @param milliseconds whether it counts milliseconds
 */
record TimeGuess(String pointer, boolean milliseconds) {

  /** As far as a station takes a time that is off, where it says nothing else. */
  private static final Duration CLOSE = Duration.ofMinutes(5);

  private static final int MILLIS_A_SECOND = 1_000;

  static Optional<TimeGuess> of(Instant arrival, Map<String, Leaf> leaves) {
    for (Map.Entry<String, Leaf> entry : leaves.entrySet()) {
      Leaf leaf = entry.getValue();
      if (leaf.isNumber()) {
        double number = Double.parseDouble(leaf.text());
        if (isClose(arrival, number)) {
          return Optional.of(new TimeGuess(entry.getKey(), false));
        }
        if (isClose(arrival, number / MILLIS_A_SECOND)) {
          return Optional.of(new TimeGuess(entry.getKey(), true));
        }
      } else if (isClose(arrival, seconds(leaf.text()))) {
        return Optional.of(new TimeGuess(entry.getKey(), false));
      }
    }
    return Optional.empty();
  }

  private static boolean isClose(Instant arrival, double seconds) {
    return Math.abs(arrival.getEpochSecond() - seconds) <= CLOSE.toSeconds();
  }

  private static double seconds(String text) {
    try {
      return OffsetDateTime.parse(text).toEpochSecond();
    } catch (DateTimeParseException e) {
      // Not a time, and so not close to one.
      return Double.NaN;
    }
  }
}
