package org.restpoint.adapters.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.outbox.OutboxMessage;

/** Writes a journal, in transactions. For one thread at a time. */
final class JournalWriter implements AutoCloseable {

  private final Connection connection;
  private @Nullable JournalStatements prepared;

  JournalWriter(Connection connection) {
    this.connection = connection;
  }

  /** The connection, for questions. */
  Connection connection() {
    return connection;
  }

  /** Writes the whole batch or nothing; on disk when it returns. */
  void write(JournalBatch batch) throws SQLException {
    together(
        statements -> {
          for (StoredReading each : batch.readings()) {
            statements.insert(each);
          }
          for (StoredEntry each : batch.entries()) {
            statements.insert(each);
          }
          for (StoredInstruction each : batch.instructions()) {
            statements.insert(each);
          }
          for (Map.Entry<String, String> each : batch.memories().entrySet()) {
            statements.putMemory(each.getKey(), each.getValue());
          }
          for (OutgoingMessage each : batch.messages()) {
            statements.insert(each);
          }
          return batch.messages().size();
        });
  }

  /** Removes messages and returns how many of them were there. */
  int remove(Collection<Long> sequences) throws SQLException {
    return together(
        statements -> {
          int removed = 0;
          for (long sequence : sequences) {
            removed += statements.remove(sequence);
          }
          return removed;
        });
  }

  void putFact(String key, String value) throws SQLException {
    together(
        statements -> {
          statements.putFact(key, value);
          return 1;
        });
  }

  /** Takes rows out for good. The file is written anew, which no statement may be in the way of. */
  Forgetting.Forgotten forget(Forgetting what) throws SQLException {
    prepareAnew();
    return JournalEraser.erase(connection, what);
  }

  List<OutboxMessage> unsent(long after, int limit) throws SQLException {
    boolean answered = false;
    try {
      List<OutboxMessage> messages = statements().unsent(after, limit);
      answered = true;
      return messages;
    } finally {
      if (!answered) {
        prepareAnew();
      }
    }
  }

  long waiting() throws SQLException {
    try (PreparedStatement count = connection.prepareStatement("SELECT count(*) FROM outbox");
        ResultSet row = count.executeQuery()) {
      return row.next() ? row.getLong(1) : 0;
    }
  }

  @Override
  public void close() throws SQLException {
    connection.close();
  }

  /*
   * With the driver's automatic commit on, it would try to begin and commit after every statement;
   * that costs five times as much as the commit itself.
   */
  private int together(Work work) throws SQLException {
    connection.setAutoCommit(false);
    boolean committed = false;
    try {
      int result = work.run(statements());
      connection.commit();
      committed = true;
      return result;
    } finally {
      if (!committed) {
        takeBack();
        prepareAnew();
      }
      leaveTransaction();
    }
  }

  private void takeBack() {
    try {
      connection.rollback();
    } catch (SQLException e) {
      // A full or failing disk makes SQLite take the transaction back by itself; then there is none
      // left to take back, and the first failure is the one to tell.
    }
  }

  private void leaveTransaction() {
    try {
      connection.setAutoCommit(true);
    } catch (SQLException e) {
      // The driver ends the empty transaction it began after the last one; where taking back found
      // none, there is none to end either. Automatic commit is on again all the same.
    }
  }

  private JournalStatements statements() throws SQLException {
    JournalStatements ready = prepared;
    if (ready == null) {
      ready = new JournalStatements(connection);
      prepared = ready;
    }
    return ready;
  }

  private void prepareAnew() {
    JournalStatements old = prepared;
    prepared = null;
    if (old != null) {
      try {
        old.close();
      } catch (SQLException e) {
        // A statement that has failed says so once more when it is closed; that was told already.
      }
    }
  }

  /** What is done inside one transaction; says how many rows it concerned. */
  private interface Work {
    int run(JournalStatements statements) throws SQLException;
  }
}
