package org.restpoint.adapters.mqtt;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Optional;

/**
 * A record of a SenML pack with the base fields applied (RFC 8428, section 4.6), except that a
 * relative time stays one: what now is, the pack does not know.
 *
 * @param name its full name, base name and name
 * @param unit its own unit, or the base unit; empty where there is neither
 * @param value its number, the base value added; empty where it has another kind of value
 * @param valueLabel the label of its value; empty for one without a value
 * @param seconds its time: from 2^28 s on since 1970, below that relative to now
 */
record SenMlRecord(
    String name,
    Optional<String> unit,
    Optional<BigDecimal> value,
    Optional<String> valueLabel,
    BigDecimal seconds) {

  /** Below this a time is relative (RFC 8428, section 4.5.3). */
  private static final BigDecimal RELATIVE_BELOW = new BigDecimal(1L << 28);

  /** Whether it says nothing about its time, so that it was taken roughly now. */
  boolean isNow() {
    return seconds.signum() == 0;
  }

  /** Its time, cut to the millisecond. */
  Instant time(Instant now) {
    long millis = ExactNumber.whole(seconds, 3);
    return seconds.compareTo(RELATIVE_BELOW) < 0
        ? now.plusMillis(millis)
        : Instant.ofEpochMilli(millis);
  }
}
