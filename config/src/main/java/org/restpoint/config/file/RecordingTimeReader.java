package org.restpoint.config.file;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.time.temporal.TemporalQueries;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.restpoint.config.station.RecordingTime;

/** Reads how the times of a recording are written. */
final class RecordingTimeReader {

  /** The forms that have a name; anything else is a pattern. */
  static final List<String> WORDS =
      List.of("iso", "seconds", "seconds-since-1970", "milliseconds-since-1970");

  private static final String A_FORM =
      String.join(", ", WORDS) + " or a pattern of a date and a time, e.g. dd.MM.yyyy HH:mm:ss";
  private static final String A_ZONE = "a place or an offset, e.g. Europe/Berlin or +01:00";
  private static final int LONGEST_PATTERN = 100;

  private final Section keys;

  RecordingTimeReader(Section keys) {
    this.keys = keys;
  }

  Optional<RecordingTime> read() {
    Optional<ZoneId> zone = keys.find("zone").flatMap(RecordingTimeReader::zone);
    Optional<Entry> entry = keys.find("time");
    if (entry.isEmpty()) {
      return Optional.of(new RecordingTime.Iso(zone));
    }
    Optional<String> text = entry.get().text(A_FORM);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    return switch (text.get()) {
      case "iso" -> Optional.of(new RecordingTime.Iso(zone));
      case "seconds" -> counted(new RecordingTime.SecondsFromZero());
      case "seconds-since-1970" -> counted(new RecordingTime.SecondsSince1970());
      case "milliseconds-since-1970" -> counted(new RecordingTime.MillisecondsSince1970());
      default -> pattern(entry.get(), text.get(), zone);
    };
  }

  private Optional<RecordingTime> counted(RecordingTime form) {
    keys.find("zone")
        .ifPresent(value -> value.refuse("zone only with time: iso or a pattern", value.found()));
    return Optional.of(form);
  }

  private Optional<RecordingTime> pattern(Entry entry, String pattern, Optional<ZoneId> zone) {
    Optional<TemporalAccessor> read =
        pattern.length() > LONGEST_PATTERN ? Optional.empty() : trial(pattern);
    if (read.isEmpty()) {
      Optional<String> meant = Entry.meant(pattern, WORDS);
      entry.problems().add(new Problem(entry.key(), entry.line(), A_FORM, entry.found(), meant));
      return Optional.empty();
    }
    if (read.get().query(TemporalQueries.zone()) == null && !keys.has("zone")) {
      keys.need("zone", "where the clock stood, as the pattern has no offset: " + A_ZONE);
      return Optional.empty();
    }
    return Optional.of(new RecordingTime.Pattern(pattern, zone));
  }

  /** A time written by the pattern and read back; empty where that gives no time. */
  private static Optional<TemporalAccessor> trial(String pattern) {
    try {
      DateTimeFormatter formatter =
          new DateTimeFormatterBuilder()
              .appendPattern(pattern)
              .parseDefaulting(ChronoField.ERA, 1)
              .toFormatter(Locale.ENGLISH)
              .withResolverStyle(ResolverStyle.STRICT);
      TemporalAccessor read =
          formatter.parse(formatter.format(Instant.EPOCH.atZone(ZoneOffset.UTC)));
      LocalDateTime.from(read);
      return Optional.of(read);
    } catch (IllegalArgumentException | DateTimeException e) {
      // Not a pattern, or one that gives no date and time; the caller tells so.
      return Optional.empty();
    }
  }

  private static Optional<ZoneId> zone(Entry entry) {
    Optional<String> text = entry.text(A_ZONE);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(ZoneId.of(text.get()));
    } catch (DateTimeException e) {
      Optional<String> meant =
          Entry.meant(text.get(), ZoneId.getAvailableZoneIds().stream().sorted().toList());
      entry.problems().add(new Problem(entry.key(), entry.line(), A_ZONE, entry.found(), meant));
      return Optional.empty();
    }
  }
}
