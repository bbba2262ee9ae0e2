package org.restpoint.adapters.journal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.restpoint.adapters.journal.JournalException.Kind;
import org.sqlite.SQLiteConfig;

/**
 * Opens connections to a journal. Nothing in this package opens the journal file in another way:
 * closing such a second descriptor would let go of the locks that SQLite holds on it, since POSIX
 * locks belong to a process.
 */
final class JournalFile {

  /** Only a stranger can be in the writer's way, and closing is bounded. */
  private static final int WRITER_PATIENCE_MILLIS = 1_000;

  private static final int READER_PATIENCE_MILLIS = 5_000;

  private JournalFile() {}

  /** A connection that writes; lays the tables in a file that is new. */
  static Connection openForWriting(JournalSettings settings) {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(WRITER_PATIENCE_MILLIS);
    return open(config, settings, JournalSchema::prepare);
  }

  /** A connection that cannot write; the file must be there. */
  static Connection openForReading(JournalSettings settings) {
    if (!Files.exists(settings.file())) {
      throw new JournalException(
          Kind.ABSENT,
          "there is no journal %s; it is made when the service first runs"
              .formatted(settings.file()));
    }
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    config.setBusyTimeout(READER_PATIENCE_MILLIS);
    return open(config, settings, JournalSchema::check);
  }

  private static Connection open(
      SQLiteConfig config, JournalSettings settings, Examination examination) {
    Path file = settings.file();
    if (Files.isDirectory(file)) {
      throw new JournalException(
          Kind.NOT_A_JOURNAL, "%s is a folder; name a file for the journal".formatted(file));
    }
    NativeFolder.prepare(settings.nativeFolder());
    try {
      Connection connection = config.createConnection("jdbc:sqlite:" + file);
      try {
        examination.examine(connection, file);
      } catch (SQLException | RuntimeException e) {
        connection.close();
        throw e;
      }
      return connection;
    } catch (SQLException e) {
      throw JournalFailure.of(e, file);
    }
  }

  /** What is looked at before a connection is handed out. */
  private interface Examination {
    void examine(Connection connection, Path file) throws SQLException;
  }
}
