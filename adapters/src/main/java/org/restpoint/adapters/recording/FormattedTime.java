package org.restpoint.adapters.recording;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.chrono.IsoChronology;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.time.temporal.TemporalQueries;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.text.IsoTime;

/**
 * Reads times that people write: ISO 8601 with an offset or at a place, or a pattern. See {@link
 * TimeForm.Pattern} for what becomes of the hours around a change of daylight saving.
 */
final class FormattedTime implements TimeText {

  /** Longer than any time; a field of garbage is not looked at. */
  private static final int LONGEST = 100;

  private static final int ISO_DATE = "2026-04-02".length();
  private static final int ISO_SECONDS = "2026-04-02T14:03:00".length();

  private final DateTimeFormatter formatter;
  private final Optional<ZoneId> zone;
  private final @Nullable TimeField utc;
  private final String expected;
  private long epochMillis;
  private long laterMillis;
  private Skip skip = Skip.TIME;
  private String fault = "";

  private FormattedTime(
      DateTimeFormatter formatter,
      Optional<ZoneId> zone,
      @Nullable TimeField utc,
      String expected) {
    this.formatter = formatter;
    this.zone = zone;
    this.utc = utc;
    this.expected = expected;
  }

  /** Times in ISO 8601; those with neither {@code Z} nor an offset only where a zone is given. */
  static FormattedTime iso(Optional<ZoneId> zone) {
    return new FormattedTime(
        IsoTime.FORMATTER,
        zone,
        new TimeField(Instant.EPOCH),
        "is not ISO 8601 (2026-04-02T14:03:00.250Z, 2026-04-02T16:03:00+02:00)");
  }

  /** Times by a pattern that {@link #require} lets pass. */
  static FormattedTime pattern(String pattern, Optional<ZoneId> zone) {
    return new FormattedTime(formatter(pattern), zone, null, "is not written as " + pattern);
  }

  /** Refuses, with an {@link IllegalArgumentException}, what gives no date and time in a zone. */
  static void require(String pattern, Optional<ZoneId> zone) {
    DateTimeFormatter formatter = formatter(pattern);
    TemporalAccessor read;
    try {
      read = formatter.parse(formatter.format(Instant.EPOCH.atZone(ZoneOffset.UTC)));
      LocalDateTime.from(read);
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(
          "the pattern %s does not give a date and a time of day".formatted(pattern), e);
    }
    if (zone.isEmpty() && read.query(TemporalQueries.zone()) == null) {
      throw new IllegalArgumentException(
          "the pattern %s has no offset, and no zone is given".formatted(pattern));
    }
  }

  /** Strict, so that the 31st of a short month is no time; the era is ours. */
  private static DateTimeFormatter formatter(String pattern) {
    return new DateTimeFormatterBuilder()
        .parseCaseInsensitive()
        .appendPattern(pattern)
        .parseDefaulting(ChronoField.ERA, 1)
        .toFormatter(Locale.ENGLISH)
        .withResolverStyle(ResolverStyle.STRICT)
        .withChronology(IsoChronology.INSTANCE);
  }

  @Override
  public boolean read(char[] text, int from, int to) {
    if (utc != null && to > from && text[to - 1] == 'Z' && utc.read(text, from, to)) {
      return take(utc.epochMillis(), utc.epochMillis());
    }
    if (to - from > LONGEST) {
      return refuse(Skip.TIME, expected);
    }
    String written = new String(text, from, to - from);
    try {
      return resolve(formatter.parse(utc == null ? written : inIso(written)));
    } catch (DateTimeException | ArithmeticException e) {
      // Not written so, or beyond what a clock shows; the caller is told.
      return refuse(Skip.TIME, expected);
    }
  }

  /** A space before the time of day and a comma before the decimals are common. */
  private static String inIso(String written) {
    char[] text = written.toCharArray();
    if (text.length > ISO_DATE && text[ISO_DATE] == ' ') {
      text[ISO_DATE] = 'T';
    }
    if (text.length > ISO_SECONDS && text[ISO_SECONDS] == ',') {
      text[ISO_SECONDS] = '.';
    }
    return new String(text);
  }

  private boolean resolve(TemporalAccessor read) {
    LocalDateTime local = LocalDateTime.from(read);
    ZoneId written = read.query(TemporalQueries.zone());
    if (written == null && zone.isEmpty()) {
      return refuse(
          Skip.TIME,
          "has neither Z nor an offset; say where its clock stood (zone: Europe/Berlin)");
    }
    ZoneId place = written == null ? zone.get() : written;
    List<ZoneOffset> offsets = place.getRules().getValidOffsets(local);
    return offsets.isEmpty()
        ? refuse(
            Skip.LOCAL_TIME,
            "does not exist in %s: clocks are put forward over it".formatted(place))
        : take(
            millis(local.toInstant(offsets.get(0))),
            millis(local.toInstant(offsets.get(offsets.size() - 1))));
  }

  private static long millis(Instant time) {
    return Math.addExact(
        Math.multiplyExact(time.getEpochSecond(), 1_000L),
        TimeField.roundedToMillis(time.getNano()));
  }

  private boolean take(long earlier, long later) {
    epochMillis = earlier;
    laterMillis = later;
    return true;
  }

  private boolean refuse(Skip why, String clause) {
    skip = why;
    fault = clause;
    return false;
  }

  @Override
  public long epochMillis() {
    return epochMillis;
  }

  @Override
  public long laterMillis() {
    return laterMillis;
  }

  @Override
  public Skip skip() {
    return skip;
  }

  @Override
  public String fault() {
    return fault;
  }
}
