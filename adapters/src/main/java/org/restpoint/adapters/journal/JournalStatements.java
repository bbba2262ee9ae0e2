package org.restpoint.adapters.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.restpoint.adapters.journal.JournalException.Kind;
import org.restpoint.adapters.outbox.OutboxMessage;
import org.restpoint.stability.reading.Reading;

/**
 * The statements of a writer, prepared once. The driver closes a statement that fails; the writer
 * then makes all of them anew.
 */
final class JournalStatements implements AutoCloseable {

  private final PreparedStatement reading;
  private final PreparedStatement entry;
  private final PreparedStatement instruction;
  private final PreparedStatement memory;
  private final PreparedStatement message;
  private final PreparedStatement removal;
  private final PreparedStatement fact;
  private final PreparedStatement unsent;

  JournalStatements(Connection connection) throws SQLException {
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

  void insert(StoredReading stored) throws SQLException {
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

  void insert(StoredEntry stored) throws SQLException {
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

  void insert(StoredInstruction stored) throws SQLException {
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

  void insert(OutgoingMessage outgoing) throws SQLException {
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

  void putMemory(String probe, String json) throws SQLException {
    put(memory, probe, json);
  }

  void putFact(String key, String value) throws SQLException {
    put(fact, key, value);
  }

  /** How many messages that removed: 1 or 0. */
  int remove(long sequence) throws SQLException {
    removal.setLong(1, sequence);
    return removal.executeUpdate();
  }

  @Override
  public void close() throws SQLException {
    for (PreparedStatement each :
        List.of(reading, entry, instruction, memory, message, removal, fact, unsent)) {
      each.close();
    }
  }
}
