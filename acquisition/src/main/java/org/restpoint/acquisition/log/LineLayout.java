package org.restpoint.acquisition.log;

import ch.qos.logback.classic.spi.ILoggingEvent;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import org.restpoint.config.station.LogStyle;

/** How one event of the log is written. */
sealed interface LineLayout permits PlainLayout, JsonLayout {

  /** Always three decimals, so that plain lines stand in columns. */
  DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'").withZone(ZoneOffset.UTC);

  /** The event as text without a line end; in JSON never more than one line. */
  String write(ILoggingEvent event);

  /**
   * The layout for a style.
   *
   * @param traces whether plain text shows stack traces; JSON always does
   */
  static LineLayout of(LogStyle style, boolean traces) {
    return switch (style) {
      case PLAIN -> new PlainLayout(traces);
      case JSON -> new JsonLayout();
    };
  }

  /** When the event was, by ISO 8601 in UTC, to the millisecond. */
  static String time(ILoggingEvent event) {
    return TIME.format(Instant.EPOCH.plus(event.getTimeStamp(), ChronoUnit.MILLIS));
  }
}
