package org.restpoint.adapters.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.restpoint.adapters.journal.JournalException.Kind;
import org.restpoint.adapters.outbox.OutboxMessage;
import org.restpoint.stability.reading.Reading;

/** The statements that write a journal, prepared once. For one thread at a time. */
final class JournalWriter implements AutoCloseable {

  private final Connection connection;
  private final PreparedStatement reading;
  private final PreparedStatement entry;
  private final PreparedStatement instruction;
  private final PreparedStatement memory;
  private final PreparedStatement message;
  private final PreparedStatement removal;
  private final PreparedStatement fact;
  private final PreparedStatement unsent;

  JournalWriter(Connection connection) throws SQLException {
    this.connection = connection;
    reading = connection.prepareStatement("INSERT INTO readings VALUES (?, ?, ?, ?)");
    entry = connection.prepareStatement("INSERT OR IGNORE INTO entries VALUES (?, ?, ?, ?, ?, ?)");
    instruction =
        connection.prepareStatement("INSERT OR IGNORE INTO instructions VALUES (?, ?, ?, ?)");
    memory = connection.prepareStatement("INSERT OR REPLACE INTO memories VALUES (?, ?)");
    message =
        connection.prepareStatement(
            "INSERT INTO outbox (topic, retained, payload) VALUES (?, ?, ?)");
    removal = connection.prepareStatement("DELETE FROM outbox WHERE sequence = ?");
    fact = connection.prepareStatement("INSERT OR REPLACE INTO facts VALUES (?, ?)");
    unsent =
        connection.prepareStatement(
            "SELECT sequence, topic, retained, payload FROM outbox"
                + " WHERE sequence > ? ORDER BY sequence LIMIT ?");
  }

  /** The connection, for questions. */
  Connection connection() {
    return connection;
  }

  /** Writes the whole batch or nothing; on disk when it returns. */
  void write(JournalBatch batch) throws SQLException {
    together(
        () -> {
          for (StoredReading each : batch.readings()) {
            insert(each);
          }
          for (StoredEntry each : batch.entries()) {
            insert(each);
          }
          for (StoredInstruction each : batch.instructions()) {
            insert(each);
          }
          for (Map.Entry<String, String> each : batch.memories().entrySet()) {
            put(memory, each.getKey(), each.getValue());
          }
          for (OutgoingMessage each : batch.messages()) {
            insert(each);
          }
          return batch.messages().size();
        });
  }

  /** Removes messages and returns how many of them were there. */
  int remove(Collection<Long> sequences) throws SQLException {
    return together(
        () -> {
          int removed = 0;
          for (long sequence : sequences) {
            removal.setLong(1, sequence);
            removed += removal.executeUpdate();
          }
          return removed;
        });
  }

  List<OutboxMessage> unsent(long after, int limit) throws SQLException {
    unsent.setLong(1, after);
    unsent.setInt(2, Math.max(limit, 0));
    List<OutboxMessage> messages = new ArrayList<>();
    try (ResultSet row = unsent.executeQuery()) {
      while (row.next()) {
        messages.add(
            new OutboxMessage(
                row.getLong(1), row.getString(2), row.getBoolean(3), row.getString(4)));
      }
    }
    return messages;
  }

  long waiting() throws SQLException {
    try (PreparedStatement count = connection.prepareStatement("SELECT count(*) FROM outbox");
        ResultSet row = count.executeQuery()) {
      return row.next() ? row.getLong(1) : 0;
    }
  }

  void putFact(String key, String value) throws SQLException {
    put(fact, key, value);
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
      int result = work.run();
      connection.commit();
      committed = true;
      return result;
    } finally {
      if (!committed) {
        takeBack();
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

  private void insert(StoredReading stored) throws SQLException {
    Reading each = stored.reading();
    reading.setString(1, stored.probe());
    reading.setLong(2, each.time().toEpochMilli());
    setNumber(3, each.millivolts());
    setNumber(4, each.celsius());
    reading.executeUpdate();
  }

  private void setNumber(int column, OptionalDouble number) throws SQLException {
    if (number.isPresent()) {
      reading.setDouble(column, number.getAsDouble());
    } else {
      reading.setNull(column, Types.REAL);
    }
  }

  private void insert(StoredEntry stored) throws SQLException {
    entry.setString(1, stored.id());
    entry.setInt(2, stored.revision());
    entry.setString(3, stored.kind());
    entry.setString(4, stored.probe());
    entry.setLong(5, stored.time().toEpochMilli());
    entry.setString(6, stored.json());
    if (entry.executeUpdate() == 0) {
      throw new JournalException(
          Kind.DUPLICATE,
          "revision %d of the %s %s is in the journal already; nothing of this was written"
              .formatted(stored.revision(), stored.kind(), stored.id()));
    }
  }

  private void insert(StoredInstruction stored) throws SQLException {
    instruction.setString(1, stored.id());
    instruction.setString(2, stored.probe());
    instruction.setLong(3, stored.time().toEpochMilli());
    instruction.setString(4, stored.json());
    if (instruction.executeUpdate() == 0) {
      throw new JournalException(
          Kind.DUPLICATE,
          "the instruction %s of the probe %s is in the journal already; nothing of this was written"
              .formatted(stored.id(), stored.probe()));
    }
  }

  private void insert(OutgoingMessage outgoing) throws SQLException {
    message.setString(1, outgoing.topic());
    message.setBoolean(2, outgoing.retained());
    message.setString(3, outgoing.payload());
    message.executeUpdate();
  }

  private static void put(PreparedStatement statement, String key, String value)
      throws SQLException {
    statement.setString(1, key);
    statement.setString(2, value);
    statement.executeUpdate();
  }

  /** What is done inside one transaction; says how many rows it concerned. */
  private interface Work {
    int run() throws SQLException;
  }
}
