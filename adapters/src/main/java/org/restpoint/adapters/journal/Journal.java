package org.restpoint.adapters.journal;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.journal.JournalException.Kind;
import org.restpoint.adapters.outbox.Outbox;
import org.restpoint.adapters.outbox.OutboxMessage;

/**
 * A station's journal: what {@link #commit} was given is on disk when it returns, all of a batch or
 * nothing, and there after a kill or a power cut. It keeps text and does not look inside, but for
 * the number of the sample that a result is of.
 *
 * <p>One service writes a journal at a time; others read it with a {@link JournalReader} meanwhile.
 * Safe to use from several threads. Every method throws a {@link JournalException} in a person's
 * words when the journal cannot do what is asked.
 */
public final class Journal implements Outbox, AutoCloseable {

  private static final long CLOSE_WITHIN_MILLIS = 2_000;

  private final JournalSettings settings;
  private final ReentrantLock lock = new ReentrantLock();
  private @Nullable JournalLock right;
  private @Nullable JournalWriter writer;
  private final AtomicLong waiting = new AtomicLong();

  /** The journal there; opens nothing. */
  public Journal(JournalSettings settings) {
    this.settings = settings;
  }

  /** Opens the journal, making it if there is none, and takes the right to write it. */
  public void start() {
    lock.lock();
    try {
      if (writer != null) {
        return;
      }
      JournalLock taken = JournalLock.take(settings.file());
      Connection connection = null;
      try {
        connection = JournalFile.openForWriting(settings);
        JournalWriter opened = new JournalWriter(connection);
        waiting.set(opened.waiting());
        right = taken;
        writer = opened;
      } catch (SQLException e) {
        throw JournalFailure.of(e, settings.file());
      } finally {
        if (writer == null) {
          closeQuietly(connection);
          taken.close();
        }
      }
    } finally {
      lock.unlock();
    }
  }

  /** Writes the whole batch or nothing; it is on disk when this returns. */
  public void commit(JournalBatch batch) {
    if (batch.isEmpty()) {
      return;
    }
    withWriter(
        open -> {
          open.write(batch);
          waiting.addAndGet(batch.messages().size());
          return batch;
        });
  }

  @Override
  public List<OutboxMessage> unsent(long after, int limit) {
    return withWriter(open -> open.unsent(after, limit));
  }

  @Override
  public void remove(Collection<Long> sequences) {
    if (sequences.isEmpty()) {
      return;
    }
    withWriter(
        open -> {
          waiting.addAndGet(-open.remove(sequences));
          return sequences;
        });
  }

  /** Counted, not asked of the database: cheap at any length. 0 before the start. */
  @Override
  public long waiting() {
    return waiting.get();
  }

  /** The latest state of each probe's routine, by probe. */
  public Map<String, String> memories() {
    return withWriter(open -> JournalQueries.memories(open.connection()));
  }

  /** The instruction with this identity that the probe was given, if it was. */
  public Optional<StoredInstruction> instruction(String probe, String id) {
    return withWriter(open -> JournalQueries.instruction(open.connection(), probe, id));
  }

  /** The latest revision of what was decided under this id, if anything was. */
  public Optional<StoredEntry> entry(String id) {
    return withWriter(open -> JournalQueries.entry(open.connection(), id));
  }

  /**
   * Takes rows out for good: no byte of them is left in the journal's files, which shrink. Writes
   * the whole file anew, so it takes as long as that.
   */
  public Forgetting.Forgotten forget(Forgetting what) {
    return withWriter(
        open -> {
          Forgetting.Forgotten forgotten = open.forget(what);
          waiting.set(open.waiting());
          return forgotten;
        });
  }

  /**
   * The latest revision of each result whose JSON has this as the number of its sample, oldest
   * first.
   */
  public List<StoredEntry> resultsOfSample(String number) {
    return withWriter(open -> JournalQueries.resultsOfSample(open.connection(), number));
  }

  /** Something noted about the station under a key, if it was. */
  public Optional<String> fact(String key) {
    return withWriter(open -> JournalQueries.fact(open.connection(), key));
  }

  /** Notes something about the station under a key, such as the address of its broker. */
  public void setFact(String key, String value) {
    withWriter(
        open -> {
          open.putFact(key, value);
          return key;
        });
  }

  /** Hands over what was decided, oldest first; does not hold up the writing. */
  public void entries(EntryQuery query, Consumer<StoredEntry> consumer) {
    read(reader -> reader.entries(query, consumer));
  }

  /** Hands over raw readings, oldest first; does not hold up the writing. */
  public void readings(SpanQuery span, Consumer<StoredReading> consumer) {
    read(reader -> reader.readings(span, consumer));
  }

  /** Hands over what was asked, oldest first; does not hold up the writing. */
  public void instructions(SpanQuery span, Consumer<StoredInstruction> consumer) {
    read(reader -> reader.instructions(span, consumer));
  }

  /** Closes the journal and gives the right to write back; waits at most 2 s for a last commit. */
  @Override
  public void close() {
    if (!lockForClosing()) {
      throw new JournalException(
          Kind.FAILED,
          "the disk with the journal %s does not answer; what was committed is safe"
              .formatted(settings.file()));
    }
    JournalWriter open = writer;
    JournalLock taken = right;
    writer = null;
    right = null;
    try {
      if (open != null) {
        open.close();
      }
    } catch (SQLException e) {
      throw JournalFailure.of(e, settings.file());
    } finally {
      if (taken != null) {
        taken.close();
      }
      lock.unlock();
    }
  }

  private boolean lockForClosing() {
    try {
      return lock.tryLock(CLOSE_WITHIN_MILLIS, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return lock.tryLock();
    }
  }

  private void read(Consumer<JournalReader> question) {
    try (JournalReader reader = new JournalReader(settings)) {
      reader.start();
      question.accept(reader);
    }
  }

  private <T> T withWriter(Work<T> work) {
    lock.lock();
    try {
      JournalWriter open = writer;
      if (open == null) {
        throw new JournalException(
            Kind.CLOSED, "the journal %s is not open".formatted(settings.file()));
      }
      return work.run(open);
    } catch (SQLException e) {
      throw JournalFailure.of(e, settings.file());
    } finally {
      lock.unlock();
    }
  }

  private static void closeQuietly(@Nullable Connection connection) {
    if (connection != null) {
      try {
        connection.close();
      } catch (SQLException e) {
        // The failure that led here is the one to tell.
      }
    }
  }

  /** What is done with the writer while the lock is held. */
  private interface Work<T> {
    T run(JournalWriter writer) throws SQLException;
  }
}
