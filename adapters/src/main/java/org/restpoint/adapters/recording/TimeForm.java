package org.restpoint.adapters.recording;

import java.time.ZoneId;
import java.util.Optional;

/** How the times of a recording are written. All are rounded to the nearest millisecond. */
public sealed interface TimeForm {

  /** ISO 8601 in UTC or seconds from a zero, one of the two in the whole file. */
  record Native() implements TimeForm {}

  /**
   * ISO 8601 with {@code Z} or an offset, {@code T} or a space before the time of day.
   *
   * @param zone where the clock stood that wrote times without either; empty where such a time is
   *     not read
   */
  record Iso(Optional<ZoneId> zone) implements TimeForm {}

  /** Seconds from a zero of the recording's own. */
  record SecondsFromZero() implements TimeForm {}

  /** Seconds since 1970-01-01T00:00:00Z. */
  record SecondsSince1970() implements TimeForm {}

  /** Milliseconds since 1970-01-01T00:00:00Z. */
  record MillisecondsSince1970() implements TimeForm {}

  /**
   * A pattern in the letters of {@link java.time.format.DateTimeFormatter}, months and halves of
   * the day in English. Refuses, with an {@link IllegalArgumentException}, one that gives no date
   * and time, and one without an offset where no zone is given.
   *
   * <p>A local time that comes twice when daylight saving ends is the first one, unless it would
   * then go back behind a row of its probe before it, or by more than 10 s behind one of another
   * probe: then it is the second. One that daylight saving passes over is not a time.
   *
   * @param pattern the pattern
   * @param zone where the clock stood; of no consequence where the pattern has an offset
   */
  record Pattern(String pattern, Optional<ZoneId> zone) implements TimeForm {

    public Pattern {
      FormattedTime.require(pattern, zone);
    }
  }
}
