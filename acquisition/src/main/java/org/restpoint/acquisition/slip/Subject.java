package org.restpoint.acquisition.slip;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.Locale;
import java.util.Optional;
import org.restpoint.stability.chemistry.Analyte;

/**
 * What a slip needs to know beside the result.
 *
 * @param analyte the ion that the probe measures; empty where the station file has no such probe
 *     any more
 * @param zone the time of day by which the reader lives
 */
public record Subject(Optional<Analyte> analyte, ZoneId zone) {

  private static final DateTimeFormatter MINUTE =
      new DateTimeFormatterBuilder()
          .appendPattern("uuuu-MM-dd HH:mm 'UTC'")
          .appendOffset("+HH:MM", "")
          .toFormatter(Locale.ROOT);

  /** A time in the reader's zone, to the minute: {@code 2026-04-02 09:06 UTC-05:00}. */
  String time(Instant instant) {
    return MINUTE.format(instant.atZone(zone));
  }

  /** What is measured, for a person. */
  String measurand() {
    return analyte
        .map(Analyte::name)
        .map(name -> name.equals("hydrogen") ? "pH" : name)
        .orElse("concentration");
  }

  /** Whether it is an ion that makes water dangerous to infants. */
  boolean isOxidisedNitrogen() {
    return analyte
        .map(Analyte::name)
        .filter(name -> name.equals("nitrate") || name.equals("nitrite"))
        .isPresent();
  }
}
