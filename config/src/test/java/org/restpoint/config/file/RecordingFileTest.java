package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.LinkSettings.Recording;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.OwnTimes;
import org.restpoint.config.station.PotentialNumber;
import org.restpoint.config.station.RecordingColumns;
import org.restpoint.config.station.RecordingColumns.Place;
import org.restpoint.config.station.RecordingLayout;
import org.restpoint.config.station.RecordingLayout.Delimiter;
import org.restpoint.config.station.RecordingLayout.Encoding;
import org.restpoint.config.station.RecordingTime;
import org.restpoint.config.station.Station;
import org.restpoint.config.station.TemperatureNumber;
import org.restpoint.config.station.Thermometer;

class RecordingFileTest {

  @TempDir Path folder;

  private Recording link(String probe) {
    Station station = new Fixture(folder).understood(Fixture.example("recording.yaml"));
    return (Recording) Objects.requireNonNull(station.probes().get(probe), probe).link();
  }

  private static Optional<Place> column(int number) {
    return Optional.of(new Place.Numbered(number));
  }

  private static Optional<Place> column(String heading) {
    return Optional.of(new Place.Headed(heading));
  }

  @Test
  void everyKeyOfALayoutIsUnderstood() {
    Recording link = link("split");
    assertThat(link.layout())
        .contains(
            new RecordingLayout(
                Delimiter.SEMICOLON,
                true,
                Encoding.LATIN_1,
                Optional.of('%'),
                true,
                new RecordingColumns(
                    column("Datum"),
                    column("Uhrzeit"),
                    column("Kanal"),
                    column("Roh"),
                    column("T/\u00B0C")),
                new Numbers(
                    Optional.of(new PotentialNumber.Counts(0.0625, -2048)),
                    Optional.of(new TemperatureNumber.Celsius())),
                new RecordingTime.Pattern(
                    "dd.MM.yyyy HH:mm:ss", Optional.of(ZoneId.of("Europe/Berlin"))),
                List.of("NaN", "-9999")));
    assertThat(link.knownAs()).contains("Kanal 1");
    assertThat(link.following()).isEmpty();
  }

  @Test
  void everyKeyOfFollowingIsUnderstood() {
    Recording link = link("grown");
    assertThat(link.layout())
        .contains(
            new RecordingLayout(
                Delimiter.TAB,
                false,
                Encoding.UTF_16,
                Optional.empty(),
                false,
                new RecordingColumns(
                    Optional.empty(), column(1), Optional.empty(), column(2), Optional.empty()),
                new Numbers(Optional.of(new PotentialNumber.Volts()), Optional.empty()),
                new RecordingTime.Iso(Optional.of(ZoneId.of("+01:00"))),
                List.of("none")));
    assertThat(link.following())
        .contains(
            new LinkSettings.Following(
                true,
                Optional.of(new OwnTimes(Duration.ofSeconds(30), Duration.ofSeconds(2))),
                Duration.ofHours(1)));
  }

  @Test
  void whatIsLeftOutIsAsUsual() {
    Recording bare = link("bare");
    RecordingLayout layout = bare.layout().orElseThrow();
    assertThat(layout.comment()).contains('#');
    assertThat(layout.time()).isEqualTo(new RecordingTime.Iso(Optional.empty()));
    assertThat(layout.columns().time()).isEmpty();
    assertThat(bare.following())
        .contains(new LinkSettings.Following(false, Optional.empty(), Duration.ofMinutes(5)));
    RecordingLayout thermometer = link("temp-1").layout().orElseThrow();
    assertThat(thermometer.numbers().temperature())
        .contains(new TemperatureNumber.Ohms(new Thermometer.Platinum(1000)));
    assertThat(thermometer.time()).isEqualTo(new RecordingTime.MillisecondsSince1970());
  }
}
