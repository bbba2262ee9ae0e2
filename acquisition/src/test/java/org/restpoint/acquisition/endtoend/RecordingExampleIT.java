package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The example of recordings under adapters/examples: checked, replayed and run. */
@Timeout(300)
class RecordingExampleIT {

  private static final Path EXAMPLES = Path.of("..", "adapters", "examples");

  @TempDir private Path folder;
  private Path station = Path.of("");

  @BeforeEach
  void copyTheExample() throws IOException {
    Path recordings = Files.createDirectory(folder.resolve("recordings"));
    try (Stream<Path> files = Files.list(EXAMPLES.resolve("recordings"))) {
      for (Path file : files.toList()) {
        Files.copy(file, recordings.resolve(file.getFileName()));
      }
    }
    station = Files.copy(EXAMPLES.resolve("recording.yaml"), folder.resolve("recording.yaml"));
  }

  private Path recording(String name) {
    return folder.resolve("recordings").resolve(name);
  }

  private static List<String> readings(Ran ran) {
    return ran.json().stream()
        .filter(event -> event.path("event").asText().equals("reading"))
        .map(RecordingExampleIT::row)
        .toList();
  }

  private static String row(JsonNode reading) {
    return "%s %s %s %s"
        .formatted(
            reading.path("time").asText(),
            reading.path("probe").asText(),
            reading.path("millivolts").asText("-"),
            reading.path("celsius").asText("-"));
  }

  @Test
  void itIsUnderstoodAndSaidBack() {
    Ran ran = Ran.restpoint(folder, "check", station).well();
    assertThat(ran.out() + ran.err())
        .contains(
            "probe     no3-a: the recording %s, played, known there as Kanal 1"
                .formatted(recording("field-day.csv")),
            "values between semicolons, decimal comma, latin-1, times dd.MM.yyyy HH:mm:ss in"
                + " Europe/Berlin",
            "columns date \"Datum\", time \"Uhrzeit\", probe \"Kanal\", millivolts \"E [mV]\","
                + " celsius \"T [\u00B0C]\"",
            "columns time \"Time\", volts \"E (V)\", kelvin 3",
            "probe     no3-d: the recording %s, followed while it grows"
                .formatted(recording("growing.csv")));
  }

  @Test
  void aFileThatLinksNameIsReplayedAsTheySayAndWhatIsSkippedIsTold() {
    Path fieldDay = recording("field-day.csv");
    Ran ran = Ran.restpoint(folder, "replay", station, fieldDay, "--raw").well();
    assertThat(readings(ran))
        .containsExactly(
            "2026-04-02T14:03:00Z no3-a 184.27 12.5",
            "2026-04-02T14:03:00Z temp-1 - 12.4",
            "2026-04-02T14:03:01Z no3-a 184.31 12.5",
            "2026-04-02T14:03:01Z temp-1 - 12.4",
            "2026-04-02T14:03:03Z no3-a 184.3 12.5",
            "2026-04-02T14:03:05Z no3-a 184.29 12.5");
    assertThat(ran.err())
        .contains(
            fieldDay + " line 6: a reading needs a potential or a temperature",
            fieldDay + " line 10: the time 2026-04-02T14:03:02Z goes back behind",
            fieldDay + " line 11: millivolts \"184,3O\" is not a number",
            "1 \u00D7 the header again (line 8), 1 \u00D7 a comment (line 1)",
            "the recording has readings of Kanal 3, which is not a probe of station archive");
  }

  @Test
  void anyFileIsReplayedInTheLayoutOfAProbe() throws IOException {
    Path other = Files.copy(recording("bench.txt"), folder.resolve("other.txt"));
    Ran ran = Ran.restpoint(folder, "replay", station, other, "--layout", "no3-b", "--raw").well();
    assertThat(readings(ran))
        .containsExactly(
            "2026-04-02T14:03:00.500Z no3-b 184.5 25.0",
            "2026-04-02T14:03:01.500Z no3-b 184.25 25.0",
            "2026-04-02T14:03:03.500Z no3-b 184.5 -");
    assertThat(ran.err())
        .contains("line 4: the time \"2026-04-02T16:03:02.5\" has neither Z nor an offset");

    Ran refused = Ran.restpoint(folder, "replay", station, other);
    assertThat(refused.exitStatus()).isEqualTo(4);
    assertThat(refused.err()).contains("Its columns are");
    Ran unknown = Ran.restpoint(folder, "replay", station, other, "--layout", "no3-x");
    assertThat(unknown.exitStatus()).isEqualTo(2);
    assertThat(unknown.err())
        .contains(
            "--layout: expected a probe whose link is a recording (no3-a, no3-b, no3-c, no3-d,"
                + " temp-1); found no3-x");
    assertThat(readings(Ran.restpoint(folder, "replay", station, recording("own.csv"), "--raw")))
        .hasSize(3);
  }

  @Test
  void theServicePlaysAndFollowsThem() throws IOException {
    Files.writeString(
        station,
        Files.readString(station).replace("broker: embedded", "broker: { embedded: { port: 0 } }"));
    try (RunningService service = RunningService.ready(station)) {
      service.message(text -> text.contains("no3-d: there is no recording"));
      Files.writeString(recording("growing.csv"), "Seconds,Raw\n");
      service.message(text -> text.contains("no3-d: the recording"));
      Files.writeString(
          recording("growing.csv"),
          "%d,2948\n?,1\n".formatted(Instant.now().getEpochSecond()),
          StandardOpenOption.APPEND);
      service.message(text -> text.contains("growing.csv line 3: the time \"?\" is not a number"));
      for (String probe : List.of("no3-a", "no3-b", "no3-c", "temp-1")) {
        service.message(text -> text.startsWith(probe) && text.contains("has ended"));
      }
      assertThat(service.terminate()).isZero();
    }
    Ran kept = Ran.restpoint(folder, "records", station, "--of", "readings", "--as", "csv").well();
    assertThat(kept.out().lines().skip(1).map(line -> line.substring(line.indexOf(',') + 1)))
        .containsExactlyInAnyOrder(
            "no3-a,184.27,12.5",
            "no3-a,184.31,12.5",
            "no3-a,184.3,12.5",
            "no3-a,184.29,12.5",
            "temp-1,,12.4",
            "temp-1,,12.4",
            "no3-b,184.5,25.0",
            "no3-b,184.25,25.0",
            "no3-b,184.5,",
            "no3-c,184.27,21.5",
            "no3-c,184.31,",
            "no3-c,184.3,21.5",
            "no3-d,184.25,");
  }
}
