package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.time.temporal.ChronoUnit;

/**
 * How patient a client of the broker is. Refuses, with an {@link IllegalArgumentException}, a span
 * that is not above zero and a first wait above the longest.
 *
 * @param connect an attempt that takes longer has failed
 * @param answer a broker that owes an acknowledgement and gives none for so long is frozen: the
 *     connection is dropped and made anew
 * @param keepAlive a broker that has been silent for so long is asked for a sign of life; no answer
 *     within the same span again ends the connection. Whole seconds, 1 or above
 * @param firstWait before the second attempt
 * @param longestWait between attempts, however many have failed
 */
public record ConnectionTimes(
    Duration connect,
    Duration answer,
    Duration keepAlive,
    Duration firstWait,
    Duration longestWait) {

  public ConnectionTimes {
    if (connect.isZero()
        || connect.isNegative()
        || answer.isZero()
        || answer.isNegative()
        || keepAlive.compareTo(Duration.ofSeconds(1)) < 0
        || !keepAlive.equals(keepAlive.truncatedTo(ChronoUnit.SECONDS))
        || firstWait.isZero()
        || firstWait.isNegative()
        || firstWait.compareTo(longestWait) > 0) {
      throw new IllegalArgumentException("spans must be above zero and in order");
    }
  }

  /**
   * 5 s to connect, 10 s for an acknowledgement, 10 s of silence, 0.2 s to 1.5 s between attempts:
   * a broker on the same network answers within milliseconds, one over a mobile link within
   * seconds; and readings are to flow again within 2 s of its return.
   */
  public static ConnectionTimes usual() {
    return new ConnectionTimes(
        Duration.ofSeconds(5),
        Duration.ofSeconds(10),
        Duration.ofSeconds(10),
        Duration.ofMillis(200),
        Duration.ofMillis(1_500));
  }

  BackOff backOff() {
    return new BackOff(firstWait, longestWait);
  }
}
