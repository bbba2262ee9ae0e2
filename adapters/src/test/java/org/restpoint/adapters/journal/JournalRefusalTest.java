package org.restpoint.adapters.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.restpoint.adapters.journal.Batches.entry;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.journal.JournalException.Kind;

class JournalRefusalTest {

  private final Path file;
  private final JournalSettings settings;

  JournalRefusalTest(@TempDir Path folder) {
    file = folder.resolve("bench.db");
    settings = new JournalSettings(file, folder.resolve("native"));
  }

  @BeforeEach
  void unpackTheLibraryInPrivate() {
    NativeFolder.prepare(settings.nativeFolder());
  }

  @Test
  void aFileThatIsNoDatabaseIsRefusedAndLeftAsItIs() throws IOException {
    byte[] letter = new byte[5_000];
    Arrays.fill(letter, (byte) 'x');
    Files.write(file, letter);
    String words = file + " is not a Restpoint journal and was left as it is; name another file";
    refused(this::startWriting, Kind.NOT_A_JOURNAL, words);
    refused(this::startReading, Kind.NOT_A_JOURNAL, words);
    assertThat(Files.readAllBytes(file)).isEqualTo(letter);
  }

  @Test
  void aDatabaseOfSomethingElseIsRefusedAndLeftAsItIs() throws Exception {
    sql("CREATE TABLE herons (name TEXT)");
    byte[] before = Files.readAllBytes(file);
    String words = file + " is not a Restpoint journal and was left as it is; name another file";
    refused(this::startWriting, Kind.NOT_A_JOURNAL, words);
    refused(this::startReading, Kind.NOT_A_JOURNAL, words);
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @Test
  void aJournalOfANewerLayoutIsRefused() throws SQLException {
    startWriting();
    sql("PRAGMA user_version = 2");
    String words =
        "the journal %s was written by a newer Restpoint (layout 2, this one knows 1); use that one, or name another file"
            .formatted(file);
    refused(this::startWriting, Kind.NEWER, words);
    refused(this::startReading, Kind.NEWER, words);
  }

  @Test
  void anEmptyFileBecomesAJournal() throws IOException {
    Files.createFile(file);
    startWriting();
    startReading();
  }

  @Test
  void aMissingFolderIsNamed() {
    Path lost = file.resolveSibling("nowhere").resolve("bench.db");
    JournalSettings elsewhere = new JournalSettings(lost, settings.nativeFolder());
    refused(
        () -> new Journal(elsewhere).start(),
        Kind.FOLDER,
        "the journal %s cannot be made: there is no folder %s; make it, or name another file"
            .formatted(lost, lost.getParent()));
  }

  @Test
  void aFolderInTheFilesPlaceIsNamed() throws IOException {
    Files.createDirectory(file);
    refused(
        this::startWriting, Kind.NOT_A_JOURNAL, file + " is a folder; name a file for the journal");
  }

  @Test
  void readingAJournalThatIsNotThereMakesNone() {
    refused(
        this::startReading,
        Kind.ABSENT,
        "there is no journal %s; it is made when the service first runs".formatted(file));
    assertThat(file).doesNotExist();
  }

  @Test
  void aSecondWriterInTheSameProcessIsRefusedAndTheFirstGoesOn() {
    try (Journal first = new Journal(settings)) {
      first.start();
      refused(
          this::startWriting,
          Kind.HELD,
          "this service already writes the journal %s; stop it, or give this station a journal of its own"
              .formatted(file));
      first.commit(Batches.of(entry("r-1", 0, 1)));
    }
    startWriting();
  }

  @Test
  void aDatabaseLockedByAStrangerIsToldAsSuch() throws SQLException {
    startWriting();
    try (Connection stranger = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = stranger.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      try (Journal journal = new Journal(settings)) {
        journal.start();
        refused(
            () -> journal.commit(Batches.of(entry("r-1", 0, 1))),
            Kind.HELD,
            "another program keeps the journal %s locked; close what has it open and try again"
                .formatted(file));
        statement.execute("ROLLBACK");
        journal.commit(Batches.of(entry("r-1", 0, 1)));
      }
    }
  }

  @Test
  void aFullDatabaseIsToldAsAFullDisk() {
    SQLException full = catchThrowableOfType(SQLException.class, this::overfill);
    assertThat(JournalFailure.of(full, file))
        .hasMessage(
            "the disk with the journal %s is full; nothing of this was written; free some space"
                .formatted(file))
        .extracting(JournalException::kind)
        .isEqualTo(Kind.FULL);
  }

  @Test
  void aQuestionMarkInThePathIsRefused() {
    assertThatThrownBy(() -> new JournalSettings(Path.of("why?.db"), settings.nativeFolder()))
        .hasMessage(
            "the journal's path why?.db has a question mark in it; choose a path without one");
  }

  private void overfill() throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA max_page_count = 2");
      statement.execute("CREATE TABLE t (x)");
      statement.execute("INSERT INTO t VALUES (zeroblob(100000))");
    }
  }

  private void startWriting() {
    try (Journal journal = new Journal(settings)) {
      journal.start();
    }
  }

  private void startReading() {
    try (JournalReader reader = new JournalReader(settings)) {
      reader.start();
    }
  }

  private void sql(String statement) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement execution = connection.createStatement()) {
      execution.execute(statement);
    }
  }

  private static void refused(ThrowingCallable call, Kind kind, String words) {
    assertThatThrownBy(call)
        .isInstanceOfSatisfying(JournalException.class, e -> assertThat(e.kind()).isEqualTo(kind))
        .hasMessage(words);
  }
}
