package org.restpoint.acquisition.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.RawReading;
import org.restpoint.acquisition.service.Stations;
import org.restpoint.config.station.Station;

/** Recordings that are written as links say. */
class RecordingLayoutReplayTest {

  private static final String STATION =
      """
      station: farm
      broker: embedded
      standards:
        low:  { concentration: 5 mg/L,   basis: as-N }
      probes:
        no3-a:
          analyte: nitrate
          basis: as-N
          link: { recording: { file: wide.csv, columns: { time: t, millivolts: E1 }, time: seconds } }
          temperature: { fixed: 12 Cel }
          calibrate: { standards: [low] }
        no3-b:
          analyte: nitrate
          basis: as-N
          link: { recording: { file: wide.csv, columns: { time: t, millivolts: E2 }, time: seconds } }
          temperature: { fixed: 12 Cel }
          calibrate: { standards: [low] }
        bare:
          analyte: nitrate
          basis: as-N
          link:
            recording: { file: wide.csv, columns: { millivolts: E2 }, follow: true, stamp: arrival }
          temperature: { fixed: 12 Cel }
          calibrate: { standards: [low] }
      """;

  @TempDir private Path folder;
  private final List<Event> events = new ArrayList<>();
  private final List<String> complaints = new ArrayList<>();

  private List<String> readings() {
    return events.stream()
        .filter(RawReading.class::isInstance)
        .map(RawReading.class::cast)
        .map(raw -> raw.time() + " " + raw.probe() + " " + raw.millivolts().getAsDouble())
        .toList();
  }

  private Replay replay() {
    return new Replay(Stations.read(folder, STATION), true, events::add, complaints::add);
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  @Test
  void probesWithColumnsOfTheirOwnInOneFileAreMergedByTime() throws IOException {
    Path wide = write("wide.csv", "t,E1,E2\n1,10,20\n2,,21\n1.5,11,\n2,12,22\n");
    Replay.Counts counts = replay().run(wide, List.of());
    assertThat(readings())
        .containsExactly(
            "1970-01-01T00:00:01Z no3-a 10.0",
            "1970-01-01T00:00:01Z no3-b 20.0",
            "1970-01-01T00:00:01.500Z no3-a 11.0",
            "1970-01-01T00:00:02Z no3-a 12.0",
            "1970-01-01T00:00:02Z no3-b 21.0",
            "1970-01-01T00:00:02Z no3-b 22.0");
    assertThat(complaints)
        .containsExactly(
            wide + " as of no3-a line 3: a reading needs a potential or a temperature",
            wide + " as of no3-b line 4: a reading needs a potential or a temperature");
    assertThat(counts).isEqualTo(new Replay.Counts(6, 2));
  }

  @Test
  void aProbeThatIsNamedSaysHowAnotherFileIsWritten() throws IOException {
    Path other = write("other.csv", "t,E1,E2\n1,10,20\n");
    replay().run(other, "no3-b", List.of());
    assertThat(readings()).containsExactly("1970-01-01T00:00:01Z no3-b 20.0");

    Station station = Stations.read(folder, STATION);
    assertThat(Replay.layouts(station)).containsExactly("no3-a", "no3-b");
    assertThatIllegalArgumentException().isThrownBy(() -> replay().run(other, "bare", List.of()));
  }

  @Test
  void aFileInTheServicesOwnFormIsReadOnceWhateverLinksSay() throws IOException {
    Path own = write("wide.csv", "time,probe,millivolts,celsius\n1,no3-a,10,\n1,bare,20,\n");
    replay().run(own, List.of());
    assertThat(readings())
        .containsExactly("1970-01-01T00:00:01Z no3-a 10.0", "1970-01-01T00:00:01Z bare 20.0");
  }

  @Test
  void whatIsSkippedIsToldInTheFirstRowsAndThenTogether() throws IOException {
    Path wide = write("other.csv", "t,E1,E2\n" + "?,1,\n".repeat(1_000) + "t,E1,E2\n5,1,2\n");
    replay().run(wide, "no3-a", List.of());
    assertThat(complaints).hasSize(21);
    assertThat(complaints.get(0))
        .isEqualTo(wide + " as of no3-a line 2: the time \"?\" is not a number of seconds (12.25)");
    assertThat(complaints.get(20))
        .isEqualTo(
            "of "
                + wide
                + " as of no3-a were passed over: 1000 \u00D7 a time that cannot be read (lines 2,"
                + " 3, 4, 5, 6, ...), 1 \u00D7 the header again (line 1002)");
  }
}
