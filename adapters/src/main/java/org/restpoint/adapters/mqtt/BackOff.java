package org.restpoint.adapters.mqtt;

import java.time.Duration;

/**
 * How long to wait before the next attempt: doubled after each failure, up to a limit.
 *
 * @param next the wait before the next attempt
 * @param longest no wait is longer than this
 */
record BackOff(Duration next, Duration longest) {

  BackOff {
    if (next.isZero() || next.isNegative() || next.compareTo(longest) > 0) {
      throw new IllegalArgumentException(
          "a wait between attempts is above zero and at most " + longest + ", found " + next);
    }
  }

  /** The wait after one more failure. */
  BackOff longer() {
    Duration doubled = next.multipliedBy(2);
    return new BackOff(doubled.compareTo(longest) > 0 ? longest : doubled, longest);
  }
}
