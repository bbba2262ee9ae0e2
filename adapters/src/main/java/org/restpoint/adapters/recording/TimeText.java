package org.restpoint.adapters.recording;

import java.time.Instant;
import org.restpoint.adapters.recording.TextForm.DecimalMark;

/** Reads times from the characters of a file; keeps the last one. */
interface TimeText {

  /** Reads the characters from one place up to another; false when they are not a time. */
  boolean read(char[] text, int from, int to);

  /** The time read last, in milliseconds since 1970-01-01T00:00:00Z. */
  long epochMillis();

  /** The later of the two times that it may be when daylight saving ends; else the same. */
  long laterMillis();

  /** Why the last one was no time: {@link Skip#TIME} or {@link Skip#LOCAL_TIME}. */
  Skip skip();

  /** Why the last one was no time, a clause that follows it. */
  String fault();

  /**
   * A reader of times of one form.
   *
   * @param zero what seconds from zero are counted from, a whole millisecond
   */
  static TimeText of(TimeForm form, DecimalMark mark, Instant zero) {
    if (form instanceof TimeForm.Iso iso) {
      return FormattedTime.iso(iso.zone());
    }
    if (form instanceof TimeForm.Pattern pattern) {
      return FormattedTime.pattern(pattern.pattern(), pattern.zone());
    }
    if (form instanceof TimeForm.SecondsFromZero) {
      return new CountedTime(mark, zero);
    }
    if (form instanceof TimeForm.SecondsSince1970) {
      return new CountedTime(mark, Instant.EPOCH);
    }
    if (form instanceof TimeForm.MillisecondsSince1970) {
      return new CountedMillis(mark);
    }
    return new TimeField(zero);
  }
}
