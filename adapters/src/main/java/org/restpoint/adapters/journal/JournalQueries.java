package org.restpoint.adapters.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.restpoint.stability.reading.Reading;

/** What can be asked of a journal; rows are handed over one by one, oldest first. */
final class JournalQueries {

  private JournalQueries() {}

  static void readings(Connection connection, SpanQuery span, Consumer<StoredReading> consumer)
      throws SQLException {
    stream(
        connection,
        "SELECT probe, time_ms, millivolts, celsius FROM readings",
        Optional.empty(),
        span,
        row ->
            consumer.accept(
                new StoredReading(
                    row.getString(1),
                    new Reading(
                        Instant.ofEpochMilli(row.getLong(2)), number(row, 3), number(row, 4)))));
  }

  static void entries(Connection connection, EntryQuery query, Consumer<StoredEntry> consumer)
      throws SQLException {
    stream(
        connection,
        "SELECT id, revision, kind, probe, time_ms, json FROM entries",
        query.kind(),
        query.span(),
        row -> consumer.accept(entry(row)));
  }

  static void instructions(
      Connection connection, SpanQuery span, Consumer<StoredInstruction> consumer)
      throws SQLException {
    stream(
        connection,
        "SELECT id, probe, time_ms, json FROM instructions",
        Optional.empty(),
        span,
        row -> consumer.accept(instruction(row)));
  }

  static Optional<StoredInstruction> instruction(Connection connection, String probe, String id)
      throws SQLException {
    try (PreparedStatement statement =
        connection.prepareStatement(
            "SELECT id, probe, time_ms, json FROM instructions WHERE probe = ? AND id = ?")) {
      statement.setString(1, probe);
      statement.setString(2, id);
      try (ResultSet row = statement.executeQuery()) {
        return row.next() ? Optional.of(instruction(row)) : Optional.empty();
      }
    }
  }

  static Optional<StoredEntry> entry(Connection connection, String id) throws SQLException {
    try (PreparedStatement statement =
        connection.prepareStatement(
            "SELECT id, revision, kind, probe, time_ms, json FROM entries WHERE id = ?"
                + " ORDER BY revision DESC LIMIT 1")) {
      statement.setString(1, id);
      try (ResultSet row = statement.executeQuery()) {
        return row.next() ? Optional.of(entry(row)) : Optional.empty();
      }
    }
  }

  static List<StoredEntry> latest(
      Connection connection, String kind, String probe, Instant from, String text, int most)
      throws SQLException {
    List<StoredEntry> found = new ArrayList<>();
    try (PreparedStatement statement =
        connection.prepareStatement(
            "SELECT id, max(revision), kind, probe, time_ms, json FROM entries"
                + " WHERE time_ms >= ? AND kind = ? AND probe = ? AND instr(json, ?) > 0"
                + " GROUP BY id ORDER BY time_ms DESC, rowid DESC LIMIT ?")) {
      statement.setLong(1, ceilingMillis(from));
      statement.setString(2, kind);
      statement.setString(3, probe);
      statement.setString(4, text);
      statement.setInt(5, most);
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          found.add(entry(row));
        }
      }
    }
    return found;
  }

  static Map<String, String> memories(Connection connection) throws SQLException {
    Map<String, String> memories = new LinkedHashMap<>();
    try (PreparedStatement statement =
            connection.prepareStatement("SELECT probe, json FROM memories ORDER BY probe");
        ResultSet row = statement.executeQuery()) {
      while (row.next()) {
        memories.put(row.getString(1), row.getString(2));
      }
    }
    return memories;
  }

  static Optional<String> fact(Connection connection, String key) throws SQLException {
    try (PreparedStatement statement =
        connection.prepareStatement("SELECT value FROM facts WHERE key = ?")) {
      statement.setString(1, key);
      try (ResultSet row = statement.executeQuery()) {
        return row.next() ? Optional.of(row.getString(1)) : Optional.empty();
      }
    }
  }

  private static StoredEntry entry(ResultSet row) throws SQLException {
    return new StoredEntry(
        row.getString(1),
        row.getInt(2),
        row.getString(3),
        row.getString(4),
        Instant.ofEpochMilli(row.getLong(5)),
        row.getString(6));
  }

  private static StoredInstruction instruction(ResultSet row) throws SQLException {
    return new StoredInstruction(
        row.getString(1), row.getString(2), Instant.ofEpochMilli(row.getLong(3)), row.getString(4));
  }

  private static OptionalDouble number(ResultSet row, int column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  /** Equal times come in the order they were written: the index on the time ends in the row. */
  private static void stream(
      Connection connection, String select, Optional<String> kind, SpanQuery span, Rows rows)
      throws SQLException {
    List<String> conditions = new ArrayList<>();
    List<Object> values = new ArrayList<>();
    kind.ifPresent(
        value -> {
          conditions.add("kind = ?");
          values.add(value);
        });
    span.probe()
        .ifPresent(
            value -> {
              conditions.add("probe = ?");
              values.add(value);
            });
    span.from()
        .ifPresent(
            value -> {
              conditions.add("time_ms >= ?");
              values.add(ceilingMillis(value));
            });
    span.to()
        .ifPresent(
            value -> {
              conditions.add("time_ms < ?");
              values.add(ceilingMillis(value));
            });
    String where = conditions.isEmpty() ? "" : " WHERE " + String.join(" AND ", conditions);
    values.add(span.limit().orElse(-1));
    try (PreparedStatement statement =
        connection.prepareStatement(select + where + " ORDER BY time_ms, rowid LIMIT ?")) {
      for (int i = 0; i < values.size(); i++) {
        statement.setObject(i + 1, values.get(i));
      }
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          rows.take(row);
        }
      }
    }
  }

  /** The first whole millisecond at or after an instant. */
  private static long ceilingMillis(Instant instant) {
    return instant.plusNanos(999_999).toEpochMilli();
  }

  /** Takes the row the result stands on. */
  private interface Rows {
    void take(ResultSet row) throws SQLException;
  }
}
