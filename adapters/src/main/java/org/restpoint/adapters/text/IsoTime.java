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
          .appendPattern("[XXX][XX][X]")
          .toFormatter(Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT)
          .withChronology(IsoChronology.INSTANCE);

  private IsoTime() {}
}
