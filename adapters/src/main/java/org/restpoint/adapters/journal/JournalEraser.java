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
    long readings;
    connection.setAutoCommit(false);
    boolean done = false;
    try {
      readings = delete(connection, what);
      connection.commit();
      done = true;
    } finally {
      if (!done) {
        connection.rollback();
      }
      connection.setAutoCommit(true);
    }
    boolean anew = writeAnew(connection);
    return new Forgetting.Forgotten(readings, emptyLog(connection) && anew);
  }

  private static long delete(Connection connection, Forgetting what) throws SQLException {
    for (String id : what.entries()) {
      run(connection, "DELETE FROM entries WHERE id = ?", id);
    }
    for (StoredEntry entry : what.rewritten()) {
      run(
          connection,
          "UPDATE entries SET json = ? WHERE id = ? AND revision = ?",
          entry.json(),
          entry.id(),
          entry.revision());
    }
    for (StoredInstruction instruction : what.instructions()) {
      run(
          connection,
          "UPDATE instructions SET json = ? WHERE probe = ? AND id = ?",
          instruction.json(),
          instruction.probe(),
          instruction.id());
    }
    for (long sequence : what.messages()) {
      run(connection, "DELETE FROM outbox WHERE sequence = ?", sequence);
    }
    long readings = 0;
    for (Forgetting.ReadingSpan span : what.readings()) {
      readings +=
          run(
              connection,
              "DELETE FROM readings WHERE probe = ? AND time_ms BETWEEN ? AND ?",
              span.probe(),
              span.from().toEpochMilli(),
              span.to().toEpochMilli());
    }
    return readings;
  }

  private static long run(Connection connection, String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setObject(i + 1, values[i]);
      }
      return statement.executeUpdate();
    }
  }

  /** Whether there was room for it: the rows have gone already, only their bytes have not. */
  private static boolean writeAnew(Connection connection) {
    try (Statement statement = connection.createStatement()) {
      statement.execute("VACUUM");
      return true;
    } catch (SQLException e) {
      return false;
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
