package org.restpoint.adapters.journal;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.restpoint.adapters.journal.JournalException.Kind;

/**
 * The journal's tables, and the two numbers in the file's header by which it is known: {@code
 * application_id} says that it is a journal, {@code user_version} how it is laid out.
 */
final class JournalSchema {

  /** "RPJL" in ASCII. */
  static final int APPLICATION_ID = 0x52504a4c;

  /** The layout this code reads and writes. */
  static final int VERSION = 1;

  /*
   * Potentials and temperatures have no declared type on purpose: a column declared REAL keeps
   * -0.0 as 0, and raw readings come back to the last bit.
   */
  private static final List<String> TABLES =
      List.of(
          "CREATE TABLE readings (probe TEXT NOT NULL, time_ms INTEGER NOT NULL,"
              + " millivolts, celsius)",
          "CREATE INDEX readings_by_time ON readings (time_ms)",
          "CREATE TABLE entries (id TEXT NOT NULL, revision INTEGER NOT NULL, kind TEXT NOT NULL,"
              + " probe TEXT NOT NULL, time_ms INTEGER NOT NULL, json TEXT NOT NULL,"
              + " PRIMARY KEY (id, revision))",
          "CREATE INDEX entries_by_time ON entries (time_ms)",
          "CREATE TABLE memories (probe TEXT NOT NULL PRIMARY KEY, json TEXT NOT NULL)",
          "CREATE TABLE instructions (id TEXT NOT NULL, probe TEXT NOT NULL,"
              + " time_ms INTEGER NOT NULL, json TEXT NOT NULL, PRIMARY KEY (probe, id))",
          "CREATE INDEX instructions_by_time ON instructions (time_ms)",
          "CREATE TABLE outbox (sequence INTEGER PRIMARY KEY AUTOINCREMENT, topic TEXT NOT NULL,"
              + " retained INTEGER NOT NULL, payload TEXT NOT NULL)",
          "CREATE TABLE facts (key TEXT NOT NULL PRIMARY KEY, value TEXT NOT NULL)",
          "PRAGMA application_id = " + APPLICATION_ID,
          "PRAGMA user_version = " + VERSION);

  /**
   * The number of the sample that an entry is of; null where it names none. What is no JSON names
   * none.
   */
  static final String SAMPLE_NUMBER =
      "CASE WHEN json_valid(json) THEN json_extract(json, '$.sample.number') END";

  /** An index may be missing: a journal without it is read as well, by looking at each entry. */
  private static final String SAMPLES =
      "CREATE INDEX IF NOT EXISTS entries_by_sample ON entries ("
          + SAMPLE_NUMBER
          + ") WHERE kind = 'result'";

  private JournalSchema() {}

  /** Readies a file for writing: lays the tables in an empty one, refuses one that is not ours. */
  static void prepare(Connection connection, Path file) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      if (isEmpty(statement)) {
        statement.execute("BEGIN IMMEDIATE");
        for (String each : TABLES) {
          statement.execute(each);
        }
        statement.execute("COMMIT");
      } else {
        check(statement, file);
      }
      statement.execute(SAMPLES);
      // Only now: switching to the write-ahead log changes the file.
      statement.execute("PRAGMA journal_mode = WAL");
      statement.execute("PRAGMA synchronous = FULL");
    }
  }

  /** Refuses a file that is not a journal this code can read. */
  static void check(Connection connection, Path file) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      check(statement, file);
    }
  }

  private static void check(Statement statement, Path file) throws SQLException {
    int version = number(statement, "PRAGMA user_version");
    if (number(statement, "PRAGMA application_id") != APPLICATION_ID || version < 1) {
      throw new JournalException(Kind.NOT_A_JOURNAL, JournalFailure.notAJournalText(file));
    }
    if (version > VERSION) {
      throw new JournalException(
          Kind.NEWER,
          "the journal %s was written by a newer Restpoint (layout %d, this one knows %d); use that one, or name another file"
              .formatted(file, version, VERSION));
    }
  }

  private static boolean isEmpty(Statement statement) throws SQLException {
    return number(statement, "PRAGMA application_id") == 0
        && number(statement, "SELECT count(*) FROM sqlite_master") == 0;
  }

  private static int number(Statement statement, String query) throws SQLException {
    try (ResultSet row = statement.executeQuery(query)) {
      return row.next() ? row.getInt(1) : 0;
    }
  }
}
