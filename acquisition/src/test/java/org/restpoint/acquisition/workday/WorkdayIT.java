package org.restpoint.acquisition.workday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.records.RecordWriter;
import org.restpoint.adapters.broker.Mosquitto;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.journal.SpanQuery;

/**
 * The working day live: the real service in a process of its own, readings and instructions over a
 * real Mosquitto, killed at noon and started again on its journal. Only its clock is not real: the
 * test sets it, from one reading to the next.
 */
@EnabledOnOs(OS.LINUX)
@Timeout(300)
class WorkdayIT {

  private static final Instant NOON = Workday.time("12:00:00");

  @TempDir private Path folder;

  @Test
  void theDayLiveComesOutAsTheTableSaysAndAsAReplayOfItDoes() throws IOException {
    List<Moment> moments = Workday.of(folder);
    Heard live;
    try (Mosquitto broker = Mosquitto.open(folder).start()) {
      Path station =
          Files.writeString(
              folder.resolve("station.yaml"),
              Table.text("station.yaml").replace("tcp://127.0.0.1:1883", broker.url().toString()));
      try (LiveDay day = new LiveDay(folder, station, broker.url())) {
        live = day.go(moments);
      }
    }
    live.assertSamples();
    live.assertEvents(List.of());
    assertThat(live.measured())
        .as("the plan replayed, where the reading cut short is cancelled")
        .isEqualTo(Replayed.plan(folder, moments).measured());
    assertThat(live.measuredBefore(NOON))
        .as("the journal of the morning replayed")
        .isEqualTo(Replayed.files(folder, journalled(true), journalled(false)).measured());
  }

  private String journalled(boolean readings) {
    StringWriter text = new StringWriter();
    SpanQuery morning =
        new SpanQuery(
            Optional.empty(),
            Optional.empty(),
            Optional.of(NOON.minusSeconds(30)),
            OptionalInt.empty());
    try (JournalReader reader =
        new JournalReader(
            new JournalSettings(
                folder.resolve(Workday.STATION + ".db"), folder.resolve("native")))) {
      reader.start();
      RecordWriter writer = new RecordWriter(reader, Workday.STATION, text);
      if (readings) {
        writer.readings(morning, true);
      } else {
        writer.instructions(morning, false);
      }
    }
    return text.toString();
  }
}
