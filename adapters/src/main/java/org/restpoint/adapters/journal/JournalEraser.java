package org.restpoint.adapters.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * Takes rows out of a journal so that no byte of them is left: the file is written anew without
 * them, and the log beside it is emptied. For a connection outside of any transaction.
 */
final class JournalEraser {

  private JournalEraser() {}

  static Forgetting.Forgotten erase(Connection connection, Forgetting what) throws SQLException {
    long rows = 0;
    connection.setAutoCommit(false);
    boolean done = false;
    try {
      rows += delete(connection, what);
      connection.commit();
      done = true;
    } finally {
      if (!done) {
        connection.rollback();
      }
      connection.setAutoCommit(true);
    }
    try (Statement statement = connection.createStatement()) {
      statement.execute("VACUUM");
    }
    return new Forgetting.Forgotten(rows, emptyLog(connection));
  }

  private static long delete(Connection connection, Forgetting what) throws SQLException {
    long rows = 0;
    for (String id : what.entries()) {
      rows += run(connection, "DELETE FROM entries WHERE id = ?", id);
    }
    for (Forgetting.InstructionKey key : what.instructions()) {
      rows +=
          run(
              connection,
              "DELETE FROM instructions WHERE probe = ? AND id = ?",
              key.probe(),
              key.id());
    }
    for (Forgetting.ReadingSpan span : what.readings()) {
      rows +=
          run(
              connection,
              "DELETE FROM readings WHERE probe = ? AND time_ms BETWEEN ? AND ?",
              span.probe(),
              span.from().toEpochMilli(),
              span.to().toEpochMilli());
    }
    for (String word : what.words()) {
      rows += run(connection, "DELETE FROM outbox WHERE instr(payload, ?) > 0", word);
    }
    return rows;
  }

  private static long run(Connection connection, String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setObject(i + 1, values[i]);
      }
      return statement.executeUpdate();
    }
  }

  /** Whether the log could be emptied: not while somebody still reads an older state in it. */
  private static boolean emptyLog(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA wal_checkpoint(TRUNCATE)")) {
      return row.next() && row.getInt(1) == 0;
    }
  }
}
