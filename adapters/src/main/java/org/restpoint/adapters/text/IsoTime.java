package org.restpoint.adapters.text;

import java.time.chrono.IsoChronology;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.Locale;

/** Times in ISO 8601, as devices and people write them. */
public final class IsoTime {

  /**
   * A date and a time of day, and behind them {@code Z}, an offset in any of its forms, or nothing;
   * small letters count as well. No day or hour that the calendar does not have.
   */
  public static final DateTimeFormatter FORMATTER =
      new DateTimeFormatterBuilder()
          .parseCaseInsensitive()
          .append(DateTimeFormatter.ISO_LOCAL_DATE_TIME)
          .append(offset("+HH:MM"))
          .append(offset("+HHmm"))
          .toFormatter(Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT)
          .withChronology(IsoChronology.INSTANCE);

  private IsoTime() {}

  /** An offset in this form, {@code Z}, or nothing. */
  private static DateTimeFormatter offset(String form) {
    return new DateTimeFormatterBuilder()
        .optionalStart()
        .appendOffset(form, "Z")
        .toFormatter(Locale.ROOT);
  }
}
