package org.restpoint.adapters.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.restpoint.adapters.journal.Batches.entry;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.journal.JournalException.Kind;
import org.restpoint.adapters.outbox.OutboxMessage;

class JournalViolenceTest {

  private final JournalSettings settings;

  JournalViolenceTest(@TempDir Path folder) {
    settings = new JournalSettings(folder.resolve("bench.db"), folder.resolve("native"));
  }

  @Test
  void whatWasCommittedIsThereAfterAKill() throws Exception {
    List<String> promised = new ArrayList<>();
    try (ChildWriter child = ChildWriter.start(settings, "")) {
      assertThat(child.line()).isEqualTo("ready");
      while (promised.size() < 200) {
        promised.add(child.line());
      }
      child.kill();
      promised.addAll(child.rest());
    }

    try (JournalReader reader = new JournalReader(settings)) {
      reader.start();
      assertThat(entryIds(reader)).containsAll(promised);
    }
    try (Journal journal = new Journal(settings)) {
      journal.start();
      Set<String> owed = new HashSet<>();
      journal.unsent(0, Integer.MAX_VALUE).stream().map(OutboxMessage::payload).forEach(owed::add);
      assertThat(owed).containsAll(promised);
      assertThat(journal.waiting()).isEqualTo(owed.size());
    }
    assertThat(integrity()).isEqualTo("ok");
  }

  @Test
  void aSecondServiceIsRefusedWhileRecordsCanBeRead() throws Exception {
    try (ChildWriter child = ChildWriter.start(settings, "")) {
      assertThat(child.line()).isEqualTo("ready");
      String first = child.line();

      try (Journal second = new Journal(settings)) {
        assertThatThrownBy(second::start)
            .hasMessage(
                "another running service (process %d) already writes the journal %s; stop it, or give this station a journal of its own"
                    .formatted(child.pid(), settings.file()));
      }
      try (JournalReader reader = new JournalReader(settings)) {
        reader.start();
        assertThat(entryIds(reader)).contains(first);
        assertThat(reader.memories()).containsKey("no3-a");
        String later = child.line();
        assertThat(entryIds(reader)).contains(later);
      }
    }
  }

  @Test
  void aDiskThatTakesNoMoreIsToldAndKeepsWhatWasCommitted() throws Exception {
    List<String> lines;
    try (ChildWriter child = ChildWriter.start(settings, "ulimit -f 5000;")) {
      lines = child.rest();
    }
    String last = lines.get(lines.size() - 1);
    assertThat(last).contains("the disk with the journal " + settings.file());
    List<String> promised = lines.subList(1, lines.size() - 1);
    assertThat(promised).isNotEmpty();
    try (JournalReader reader = new JournalReader(settings)) {
      reader.start();
      assertThat(entryIds(reader)).containsAll(promised);
    }
    assertThat(integrity()).isEqualTo("ok");
  }

  @Test
  void afterAFullDiskCommitsGoOnOnceThereIsRoom() throws Exception {
    JournalBatch large =
        Batches.of(
            entry("r-1", 0, 1),
            new StoredEntry("r-2", 0, "result", "no3-a", Batches.NOON, "x".repeat(500_000)));
    try (JournalWriter writer = new JournalWriter(JournalFile.openForWriting(settings));
        Statement statement = writer.connection().createStatement()) {
      statement.execute("PRAGMA max_page_count = 30");
      SQLException full = catchThrowableOfType(SQLException.class, () -> writer.write(large));
      assertThat(JournalFailure.of(full, settings.file()).kind()).isEqualTo(Kind.FULL);
      writer.write(Batches.of(entry("r-3", 0, 3)));
      statement.execute("PRAGMA max_page_count = 100000");
      writer.write(large);
    }
    try (JournalReader reader = new JournalReader(settings)) {
      reader.start();
      assertThat(entryIds(reader)).containsExactlyInAnyOrder("r-1", "r-2", "r-3");
    }
    assertThat(integrity()).isEqualTo("ok");
  }

  @Test
  void aCopyMadeWhileTheServiceWritesIsAJournal() throws Exception {
    JournalSettings copy =
        new JournalSettings(settings.file().resolveSibling("copy.db"), settings.nativeFolder());
    String promised;
    try (ChildWriter child = ChildWriter.start(settings, "")) {
      assertThat(child.line()).isEqualTo("ready");
      promised = child.line();
      NativeFolder.prepare(settings.nativeFolder());
      try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + settings.file());
          Statement statement = connection.createStatement()) {
        statement.execute("VACUUM INTO '" + copy.file() + "'");
      }
    }
    try (Journal journal = new Journal(copy)) {
      journal.start();
      assertThat(journal.waiting()).isPositive();
    }
    try (JournalReader reader = new JournalReader(copy)) {
      reader.start();
      assertThat(entryIds(reader)).contains(promised);
    }
  }

  @Test
  void aLibraryThatCannotBeUnpackedIsToldAsSuch() throws Exception {
    try (ChildWriter child = ChildWriter.start(settings, "ulimit -f 100;")) {
      assertThat(child.rest())
          .singleElement()
          .asString()
          .startsWith("FAILED: the database library cannot be unpacked into ")
          .contains(settings.nativeFolder().toString())
          .endsWith("; see that the disk has room and lets programs run from there");
    }
  }

  @Test
  void theLibraryIsUnpackedInPrivateAndWhatAKilledProcessLeftIsRemoved() throws Exception {
    Path left;
    try (ChildWriter child = ChildWriter.start(settings, "")) {
      assertThat(child.line()).isEqualTo("ready");
      left = settings.nativeFolder().resolve("sqlite-" + child.pid());
      assertThat(left).isNotEmptyDirectory();
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(left)))
          .isEqualTo("rwx------");
      assertThat(
              PosixFilePermissions.toString(Files.getPosixFilePermissions(settings.nativeFolder())))
          .isEqualTo("rwx------");
      child.kill();
    }
    assertThat(left).exists();
    try (Journal journal = new Journal(settings)) {
      journal.start();
    }
    assertThat(left).doesNotExist();
  }

  private static Set<String> entryIds(JournalReader reader) {
    Set<String> ids = new HashSet<>();
    reader.entries(EntryQuery.all(), each -> ids.add(each.id()));
    return ids;
  }

  private String integrity() throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + settings.file());
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA integrity_check")) {
      return row.next() ? row.getString(1) : "nothing";
    }
  }
}
