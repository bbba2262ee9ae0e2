package org.restpoint.adapters.mqtt;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;

/** Says by how much a time is off, which way, and what is the likely cause. */
final class TimeOff {

  /** Zones differ by whole half hours, bar a few; what is that close to one is taken for a zone. */
  private static final Duration ZONE_STEP = Duration.ofMinutes(30);

  private static final Duration CLOSE = Duration.ofMinutes(2);
  private static final Duration FURTHEST_ZONE = Duration.ofHours(14).plus(CLOSE);

  /**
   * Seconds taken for milliseconds are of 1970, milliseconds taken for seconds of the year 50000.
   */
  private static final Instant EARLIEST_BELIEVED = Instant.parse("2001-01-01T00:00:00Z");

  private static final Instant LATEST_BELIEVED = Instant.parse("9999-12-31T23:59:59Z");

  private TimeOff() {}

  static String words(Instant time, Duration off, Duration within) {
    return "its time, %s, is %s %s the clock, at most %s is allowed: %s"
        .formatted(
            time,
            span(off.abs()),
            off.isNegative() ? "behind" : "ahead of",
            span(within),
            cause(time, off.abs()));
  }

  private static String cause(Instant time, Duration off) {
    if (time.isAfter(LATEST_BELIEVED)) {
      return "milliseconds taken for seconds?";
    }
    if (time.isBefore(EARLIEST_BELIEVED)) {
      return "a clock that was never set, or seconds taken for milliseconds?";
    }
    long steps = Math.round((double) off.toMillis() / ZONE_STEP.toMillis());
    boolean likeZone =
        steps > 0
            && off.compareTo(FURTHEST_ZONE) <= 0
            && off.minus(ZONE_STEP.multipliedBy(steps)).abs().compareTo(CLOSE) <= 0;
    return likeZone
        ? "a local time taken for UTC, or the other way round?"
        : "is the device's clock, or this computer's, wrong?";
  }

  /** A span: {@code 7.5 s}, {@code 12 min 3 s}, {@code 5 h}, {@code 3 d}. */
  static String span(Duration span) {
    if (span.compareTo(Duration.ofHours(2)) >= 0) {
      return span.compareTo(Duration.ofDays(2)) < 0 ? span.toHours() + " h" : span.toDays() + " d";
    }
    long minutes = span.toMinutes();
    BigDecimal seconds = BigDecimal.valueOf(span.toMillis() - 60_000 * minutes, 3);
    String rest = seconds.stripTrailingZeros().toPlainString() + " s";
    if (minutes == 0) {
      return rest;
    }
    return minutes + " min" + (seconds.signum() == 0 ? "" : " " + rest);
  }
}
