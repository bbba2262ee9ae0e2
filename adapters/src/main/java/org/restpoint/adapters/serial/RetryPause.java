package org.restpoint.adapters.serial;

import java.time.Duration;

/**
 * How long to wait before a port is tried again: a tenth of a second at first, twice as long each
 * time, and never more than a second, so that a device is read within two seconds of its return.
 */
final class RetryPause {

  static final Duration FIRST = Duration.ofMillis(100);
  static final Duration LONGEST = Duration.ofSeconds(1);

  private Duration next = FIRST;

  /**
   * The pause after an attempt.
   *
   * @param worked whether the port could be read at all
   */
  Duration after(boolean worked) {
    Duration doubled = next.multipliedBy(2);
    next = worked ? FIRST : doubled.compareTo(LONGEST) < 0 ? doubled : LONGEST;
    return next;
  }
}
