package org.restpoint.acquisition.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.station.StationTerms;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.config.file.StationFile;
import org.restpoint.config.station.Broker;

class DemoFolderTest {

  @TempDir Path parent;

  @Test
  void aFolderThatIsNotThereIsMadeAndItsStationFileIsUnderstood() {
    Path station = prepared(parent.resolve("a/b"), 1884);

    StationFile.Outcome outcome = StationFile.read(station, StationTerms.vocabulary());
    assertThat(outcome)
        .isInstanceOfSatisfying(
            StationFile.Outcome.Understood.class,
            understood -> {
              assertThat(understood.station().broker()).isEqualTo(new Broker.Embedded(1884));
              assertThat(understood.station().journal())
                  .isEqualTo(station.resolveSibling("sample-bench.db"));
            });
  }

  @Test
  void theStationFileSaysThatItIsInvented() throws IOException {
    assertThat(Files.readString(prepared(parent, 0)).lines().findFirst())
        .hasValueSatisfying(line -> assertThat(line).startsWith("#").contains("invented"));
  }

  @Test
  void ofAFormerDemoWhatItWroteIsReplacedAndWhatElseIsThereStays() throws IOException {
    prepared(parent, 0);
    Files.writeString(parent.resolve("sample-bench.db"), "no journal");
    Files.writeString(parent.resolve("readings.csv"), "kept");

    prepared(parent, 1885);

    assertThat(parent.resolve("station.yaml")).content().contains("port: 1885");
    assertThat(parent.resolve("sample-bench.db")).doesNotExist();
    assertThat(parent.resolve("readings.csv")).hasContent("kept");
  }

  @Test
  void aFolderWithSomethingElseIsRefusedAndStaysAsItIs() throws IOException {
    Path station = Files.writeString(parent.resolve("station.yaml"), "station: willow-bench\n");

    assertThatExceptionOfType(DemoException.class)
        .isThrownBy(() -> prepared(parent, 0))
        .withMessage(
            "%s holds something else than a former demo, so nothing was touched; name another folder with --folder",
            parent)
        .satisfies(thrown -> assertThat(thrown.begun()).isFalse());
    assertThat(station).hasContent("station: willow-bench");
    assertThat(parent).isDirectoryNotContaining("glob:**.db");
  }

  @Test
  void aFileInItsPlaceIsRefused() throws IOException {
    Path file = Files.writeString(parent.resolve("taken"), "text");

    assertThatExceptionOfType(DemoException.class)
        .isThrownBy(() -> prepared(file, 0))
        .withMessageContaining("taken is not a folder, so nothing was touched");
    assertThat(file).hasContent("text");
  }

  @Test
  void aDemoThatStillRunsIsNotReplaced() {
    Path station = prepared(parent, 1884);
    JournalSettings settings =
        new JournalSettings(parent.resolve("sample-bench.db"), parent.resolve("native"));
    try (Journal running = new Journal(settings)) {
      running.start();

      assertThatExceptionOfType(DemoException.class)
          .isThrownBy(() -> prepared(parent, 1885))
          .withMessageContaining("already writes the journal");
      assertThat(station).content().contains("port: 1884");
    }
  }

  private Path prepared(Path folder, int port) {
    return new DemoFolder(folder, parent.resolve("native")).prepare(port);
  }
}
