package org.restpoint.adapters.journal;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.journal.JournalException.Kind;

/**
 * Reads a journal without being able to change it, also while a service writes it. Each question
 * sees what was committed when it was asked. Questions to one reader are answered one after the
 * other; a {@link JournalException} says what is wrong.
 */
public final class JournalReader implements AutoCloseable {

  private final JournalSettings settings;
  private @Nullable Connection connection;

  /** A reader of the journal there; opens nothing. */
  public JournalReader(JournalSettings settings) {
    this.settings = settings;
  }

  /** Opens the journal; refuses a file that is absent, something else or newer. */
  public synchronized void start() {
    if (connection == null) {
      connection = JournalFile.openForReading(settings);
    }
  }

  /** Hands over raw readings, oldest first. */
  public synchronized void readings(SpanQuery span, Consumer<StoredReading> consumer) {
    ask(
        open -> {
          JournalQueries.readings(open, span, consumer);
          return span;
        });
  }

  /** Hands over what was decided, oldest first. */
  public synchronized void entries(EntryQuery query, Consumer<StoredEntry> consumer) {
    ask(
        open -> {
          JournalQueries.entries(open, query, consumer);
          return query;
        });
  }

  /** The latest revision of what was decided under this identity, if it was. */
  public synchronized Optional<StoredEntry> entry(String id) {
    return ask(open -> JournalQueries.entry(open, id));
  }

  /** Hands over what was asked, oldest first. */
  public synchronized void instructions(SpanQuery span, Consumer<StoredInstruction> consumer) {
    ask(
        open -> {
          JournalQueries.instructions(open, span, consumer);
          return span;
        });
  }

  /** The instruction with this identity that the probe was given, if it was. */
  public synchronized Optional<StoredInstruction> instruction(String probe, String id) {
    return ask(open -> JournalQueries.instruction(open, probe, id));
  }

  /** The latest state of each probe's routine, by probe. */
  public synchronized Map<String, String> memories() {
    return ask(JournalQueries::memories);
  }

  /** Something noted about the station under a key, if it was. */
  public synchronized Optional<String> fact(String key) {
    return ask(open -> JournalQueries.fact(open, key));
  }

  @Override
  public synchronized void close() {
    Connection open = connection;
    connection = null;
    if (open != null) {
      try {
        open.close();
      } catch (SQLException e) {
        throw JournalFailure.of(e, settings.file());
      }
    }
  }

  private <T> T ask(Question<T> question) {
    Connection open = connection;
    if (open == null) {
      throw new JournalException(
          Kind.CLOSED, "the journal %s is not open".formatted(settings.file()));
    }
    try {
      return question.ask(open);
    } catch (SQLException e) {
      throw JournalFailure.of(e, settings.file());
    }
  }

  /** One question to the database. */
  private interface Question<T> {
    T ask(Connection connection) throws SQLException;
  }
}
