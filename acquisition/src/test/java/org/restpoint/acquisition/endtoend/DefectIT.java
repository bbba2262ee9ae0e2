package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.JournalBatch;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.journal.StoredEntry;

/** A service that meets in its journal what it can never have written. */
@Timeout(120)
class DefectIT {

  @TempDir private Path folder;

  private void plant(String json) {
    try (Journal journal =
        new Journal(new JournalSettings(folder.resolve("bench.db"), folder.resolve("native")))) {
      journal.start();
      journal.commit(
          new JournalBatch(
              List.of(),
              List.of(new StoredEntry("r-1", 1, "result", "no3-a", Instant.EPOCH, json)),
              List.of(),
              Map.of(),
              List.of()));
    }
  }

  @Test
  void itEndsAndSaysWhereInsteadOfStayingUpAndAnsweringNobody() {
    Path station =
        BenchStation.plain(
            folder,
            "{ embedded: { port: 0 } }",
            "",
            BenchStation.serial(folder.resolve("no-such-port")));
    plant("{\"event\":\"result\",\"sample\":{\"number\":\"S-1\"}}");
    try (RunningService service = RunningService.ready(station);
        Rig rig = Rig.connect(service.broker(), "bench").awaitOnline(true)) {
      rig.tell("no3-a", "{\"do\":\"sample\",\"sample\":{\"number\":\"S-1\",\"kind\":\"soil\"}}");
      assertThat(service.exitStatus()).isEqualTo(1);
      assertThat(String.join("\n", service.log()))
          .containsSubsequence(
              "ERROR the engine has ended by a defect of the service's own: ",
              "the service has ended by a defect of its own",
              "Caused by: ",
              "SampleDesk.keep");
    }
  }
}
