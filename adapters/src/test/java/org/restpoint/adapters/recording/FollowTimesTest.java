package org.restpoint.adapters.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.quantity.Meanings;
import org.restpoint.adapters.recording.TextForm.DecimalMark;
import org.restpoint.adapters.recording.TextForm.Delimiter;
import org.restpoint.stability.reading.Reading;

/** Which times readings of a growing recording have. */
class FollowTimesTest extends FollowBench {

  private static final RecordingLayout GERMAN =
      new RecordingLayout(
          new TextForm(Delimiter.SEMICOLON, DecimalMark.COMMA, Encoding.LATIN_1, Optional.empty()),
          true,
          new RecordingColumns(
              Optional.empty(),
              Optional.of(new Column.Headed("Zeit")),
              Optional.empty(),
              Optional.of(new Column.Headed("U/mV")),
              Optional.of(new Column.Headed("T/\u00B0C"))),
          Meanings.MILLIVOLTS_AND_CELSIUS,
          new TimeForm.Iso(Optional.of(ZoneId.of("Europe/Berlin"))),
          Set.of());

  FollowTimesTest(@TempDir Path folder) {
    super(folder);
  }

  @Test
  void rowsFromTheStartCountWhereTheyAreNearTheClock() throws Exception {
    write("time,probe,millivolts,celsius\n2026-10-24T21:00:00Z,a,1,\n2026-10-25T00:26:00Z,a,2,\n");
    follow(FollowBench::fromStart);
    assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOW.minusSeconds(240), 2));
    assertThat(heard.nextTrouble().sentences())
        .isEqualTo(
            file
                + " line 2: the time 2026-10-24T21:00:00Z is 12600 s behind the clock, more than"
                + " 300 s. Set the clock of what writes it, say its zone, or let time-within be"
                + " more");
    assertThat(counts()).isEqualTo(new LinkCounts(2, 1, 1, 0));
  }

  @Test
  void aTimeFarAheadDoesNotShutOutTheRowsAfterIt() throws Exception {
    write("time,probe,millivolts,celsius\n2062-10-25T00:30:00Z,a,1,\n2026-10-25T00:30:00Z,a,2,\n");
    follow(FollowBench::fromStart);
    assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOW, 2));
  }

  @Test
  void aLocalTimeThatComesTwiceIsTheOneNearTheClock() throws Exception {
    write("Zeit;U/mV;T/\u00B0C\n2026-10-25 02:30:00;-12,5;21,5\n");
    follow(
        settings ->
            new FollowSettings(
                settings.file(), "a", GERMAN, true, settings.stamp(), settings.noDataAfter()));
    assertThat(heard.nextReading()).isEqualTo(Reading.of(NOW, -12.5, 21.5));
    link.close();

    follow(
        settings ->
            new FollowSettings(
                settings.file(), "a", GERMAN, true, settings.stamp(), settings.noDataAfter()),
        NOW.plusSeconds(3_600));
    assertThat(heard.nextReading()).isEqualTo(Reading.of(NOW.plusSeconds(3_600), -12.5, 21.5));
  }

  @Test
  void aFileWithoutTimesIsStampedOnArrival() throws Exception {
    RecordingLayout bare =
        new RecordingLayout(
            TextForm.NATIVE,
            false,
            new RecordingColumns(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new Column.Numbered(1)),
                Optional.empty()),
            Meanings.MILLIVOLTS,
            new TimeForm.SecondsFromZero(),
            Set.of());
    write("");
    follow(
        settings ->
            new FollowSettings(
                settings.file(), "a", bare, false, new Stamp.OnArrival(), settings.noDataAfter()));
    settled();
    append("5\r\n");
    assertThat(heard.nextReading()).isEqualTo(Reading.ofMillivolts(NOW, 5));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> new FollowSettings(file, "a", bare, false, NATIVE.stamp(), NATIVE.noDataAfter()));
  }
}
