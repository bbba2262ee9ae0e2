package org.restpoint.acquisition.command;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.restpoint.acquisition.probe.Words;
import org.restpoint.config.station.LinkSettings.Following;
import org.restpoint.config.station.LinkSettings.Recording;
import org.restpoint.config.station.PotentialNumber;
import org.restpoint.config.station.RecordingColumns;
import org.restpoint.config.station.RecordingColumns.Place;
import org.restpoint.config.station.RecordingLayout;
import org.restpoint.config.station.RecordingTime;
import org.restpoint.config.station.TemperatureNumber;

/** Says how a recording is understood. */
final class RecordingWords {

  private RecordingWords() {}

  /** Which file it is and whether it is played or followed. */
  static String of(Recording recording) {
    return "the recording %s, %s%s"
        .formatted(
            recording.file(),
            recording.following().map(RecordingWords::following).orElse("played"),
            recording.knownAs().map(", known there as %s"::formatted).orElse(""));
  }

  /** How it is written, in lines of their own; none for the service's own form. */
  static List<String> layout(Recording recording) {
    return recording
        .layout()
        .map(layout -> List.of(text(layout), "columns " + columns(layout)))
        .orElse(List.of());
  }

  private static String following(Following following) {
    return "followed while it grows%s, %s"
        .formatted(
            following.fromStart() ? " from its start" : "",
            following
                .times()
                .map(times -> "times within %s of the clock".formatted(Words.span(times.within())))
                .orElse("stamped on arrival"));
  }

  private static String text(RecordingLayout layout) {
    List<String> parts = new ArrayList<>();
    parts.add("values between " + lower(layout.delimiter()) + "s");
    if (layout.decimalComma()) {
      parts.add("decimal comma");
    }
    parts.add(lower(layout.encoding()).replace('_', '-'));
    if (!layout.header()) {
      parts.add("no header");
    }
    if (layout.columns().time().isPresent()) {
      parts.add("times " + time(layout.time()));
    }
    return String.join(", ", parts);
  }

  private static String lower(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }

  private static String time(RecordingTime time) {
    if (time instanceof RecordingTime.Iso iso) {
      return "ISO 8601" + place(iso.zone());
    }
    if (time instanceof RecordingTime.Pattern pattern) {
      return pattern.pattern() + place(pattern.zone());
    }
    if (time instanceof RecordingTime.SecondsFromZero) {
      return "in seconds from zero";
    }
    return time instanceof RecordingTime.SecondsSince1970
        ? "in seconds since 1970"
        : "in milliseconds since 1970";
  }

  private static String place(Optional<ZoneId> zone) {
    return zone.map(" in %s"::formatted).orElse("");
  }

  private static String columns(RecordingLayout layout) {
    RecordingColumns columns = layout.columns();
    List<String> all = new ArrayList<>();
    add(all, "date", columns.date());
    add(all, "time", columns.time());
    add(all, "probe", columns.probe());
    add(
        all,
        layout.numbers().potential().map(PotentialNumber::key).orElse(""),
        columns.potential());
    add(
        all,
        layout.numbers().temperature().map(TemperatureNumber::key).orElse(""),
        columns.temperature());
    return String.join(", ", all);
  }

  private static void add(List<String> all, String name, Optional<Place> place) {
    place.ifPresent(
        found ->
            all.add(
                name
                    + (found instanceof Place.Headed headed
                        ? " \"%s\"".formatted(headed.heading())
                        : " " + ((Place.Numbered) found).number())));
  }
}
