package org.restpoint.acquisition.service;

import java.time.InstantSource;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongSupplier;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.recording.Column;
import org.restpoint.adapters.recording.Encoding;
import org.restpoint.adapters.recording.FollowLink;
import org.restpoint.adapters.recording.FollowSettings;
import org.restpoint.adapters.recording.RecordingColumns;
import org.restpoint.adapters.recording.RecordingLayout;
import org.restpoint.adapters.recording.RecordingLink;
import org.restpoint.adapters.recording.RecordingSettings;
import org.restpoint.adapters.recording.Stamp;
import org.restpoint.adapters.recording.TextForm;
import org.restpoint.adapters.recording.TimeForm;
import org.restpoint.config.station.LinkSettings.Following;
import org.restpoint.config.station.LinkSettings.Recording;
import org.restpoint.config.station.RecordingColumns.Place;
import org.restpoint.config.station.RecordingTime;

/** Says to a link, or to a replay, what the station file says of a recording. */
public final class RecordingWiring {

  private RecordingWiring() {}

  static Link link(
      Recording settings,
      String probe,
      LinkListener listener,
      InstantSource clock,
      LongSupplier nanos) {
    String name = settings.knownAs().orElse(probe);
    if (settings.following().isEmpty()) {
      return new RecordingLink(
          new RecordingSettings(settings.file(), name, layout(settings)), listener, clock, nanos);
    }
    Following following = settings.following().get();
    return new FollowLink(
        new FollowSettings(
            settings.file(),
            name,
            layout(settings),
            following.fromStart(),
            following
                .times()
                .<Stamp>map(times -> new Stamp.Recorded(times.within()))
                .orElseGet(Stamp.OnArrival::new),
            following.noDataAfter()),
        listener,
        clock,
        nanos);
  }

  /** How a recording is written: as the station file says, else in the service's own form. */
  public static RecordingLayout layout(Recording settings) {
    return settings.layout().map(RecordingWiring::layout).orElse(RecordingLayout.NATIVE);
  }

  private static RecordingLayout layout(org.restpoint.config.station.RecordingLayout layout) {
    return new RecordingLayout(
        new TextForm(
            switch (layout.delimiter()) {
              case COMMA -> TextForm.Delimiter.COMMA;
              case SEMICOLON -> TextForm.Delimiter.SEMICOLON;
              case TAB -> TextForm.Delimiter.TAB;
            },
            layout.decimalComma() ? TextForm.DecimalMark.COMMA : TextForm.DecimalMark.POINT,
            switch (layout.encoding()) {
              case UTF_8 -> Encoding.UTF_8;
              case UTF_16 -> Encoding.UTF_16;
              case LATIN_1 -> Encoding.LATIN_1;
            },
            layout.comment()),
        layout.header(),
        columns(layout.columns()),
        DeviceWiring.meaning(layout.numbers()),
        time(layout.time()),
        Set.copyOf(layout.missing()));
  }

  private static RecordingColumns columns(org.restpoint.config.station.RecordingColumns columns) {
    return new RecordingColumns(
        column(columns.date()),
        column(columns.time()),
        column(columns.probe()),
        column(columns.potential()),
        column(columns.temperature()));
  }

  private static Optional<Column> column(Optional<Place> place) {
    return place.map(
        given ->
            given instanceof Place.Headed headed
                ? new Column.Headed(headed.heading())
                : new Column.Numbered(((Place.Numbered) given).number()));
  }

  private static TimeForm time(RecordingTime time) {
    if (time instanceof RecordingTime.Iso iso) {
      return new TimeForm.Iso(iso.zone());
    }
    if (time instanceof RecordingTime.Pattern pattern) {
      return new TimeForm.Pattern(pattern.pattern(), pattern.zone());
    }
    if (time instanceof RecordingTime.SecondsFromZero) {
      return new TimeForm.SecondsFromZero();
    }
    return time instanceof RecordingTime.SecondsSince1970
        ? new TimeForm.SecondsSince1970()
        : new TimeForm.MillisecondsSince1970();
  }
}
