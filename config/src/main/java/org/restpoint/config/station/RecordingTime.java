package org.restpoint.config.station;

import java.time.ZoneId;
import java.util.Optional;

/** How the times of a recording are written. */
public sealed interface RecordingTime {

  /**
   * ISO 8601.
   *
   * @param zone where the clock stood that wrote times with neither {@code Z} nor an offset
   */
  record Iso(Optional<ZoneId> zone) implements RecordingTime {}

  /** Seconds from a zero of the recording's own. */
  record SecondsFromZero() implements RecordingTime {}

  /** Seconds since 1970-01-01T00:00:00Z. */
  record SecondsSince1970() implements RecordingTime {}

  /** Milliseconds since 1970-01-01T00:00:00Z. */
  record MillisecondsSince1970() implements RecordingTime {}

  /**
   * A pattern in the letters of {@link java.time.format.DateTimeFormatter}, in English.
   *
   * @param pattern gives a date and a time of day
   * @param zone where the clock stood; there unless the pattern has an offset
   */
  record Pattern(String pattern, Optional<ZoneId> zone) implements RecordingTime {}
}
