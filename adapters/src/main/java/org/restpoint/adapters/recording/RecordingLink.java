package org.restpoint.adapters.recording;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkTally;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.stability.reading.Reading;

/**
 * Plays one probe's rows of a recording at the speed they were made, on a thread of its own. The
 * first reading is stamped with the time it is played, the others keep their distance from it.
 *
 * <p>A recording that cannot be opened is tried again every 5 s. One that fails half-way is not:
 * its beginning would come twice. Counted are this probe's rows and every row that is no reading.
 */
public final class RecordingLink implements Link {

  private static final Duration TRY_AGAIN_AFTER = Duration.ofSeconds(5);
  private static final long CLOSE_WITHIN_MILLIS = 2_000;

  /** Told one by one up to here, then only counted: a file can have a million of them. */
  private static final int PROBLEMS_TOLD = 5;

  private final RecordingSettings settings;
  private final LinkListener listener;
  private final InstantSource clock;
  private final LongSupplier nanos;
  private final LinkTally tally = new LinkTally();
  private final CountDownLatch closed = new CountDownLatch(1);
  private final Thread thread;
  private volatile LinkHealth health = new LinkHealth(Condition.NEW, "", Optional.empty());
  private int problemsTold;

  /**
   * A link that plays it; opens nothing.
   *
   * @param clock stamps the first reading
   * @param nanos paces the others, such as {@code System::nanoTime}
   */
  public RecordingLink(
      RecordingSettings settings, LinkListener listener, InstantSource clock, LongSupplier nanos) {
    this.settings = settings;
    this.listener = listener;
    this.clock = clock;
    this.nanos = nanos;
    this.thread = new Thread(this::run, "recording " + settings.probe());
    thread.setDaemon(true);
  }

  @Override
  public void start() {
    turn(Condition.OPENING, "");
    thread.start();
  }

  @Override
  public LinkHealth check() {
    return health;
  }

  @Override
  public LinkCounts counts() {
    return tally.counts();
  }

  @Override
  public void close() {
    closed.countDown();
    try {
      if (Thread.currentThread() != thread) {
        thread.join(CLOSE_WITHIN_MILLIS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    turn(Condition.CLOSED, "");
  }

  private void run() {
    try {
      RecordingReader reader = open();
      String told = "";
      while (reader == null) {
        if (!told.equals(health.detail())) {
          told = health.detail();
          tell("recording-unreadable", told, "Put the recording there; it is tried again.");
        }
        if (closed.await(TRY_AGAIN_AFTER.toMillis(), TimeUnit.MILLISECONDS)) {
          return;
        }
        reader = open();
      }
      play(reader);
    } catch (InterruptedException e) {
      // Somebody wants this thread to end; it does, as after closing.
      turn(Condition.LOST, "playing the recording %s was interrupted".formatted(settings.file()));
    }
  }

  private @Nullable RecordingReader open() {
    try {
      return RecordingReader.open(settings.file(), this::reject);
    } catch (RecordingException e) {
      turn(Condition.LOST, String.valueOf(e.getMessage()));
      return null;
    }
  }

  private void play(RecordingReader reader) throws InterruptedException {
    turn(Condition.READING, "");
    try (reader) {
      Playing playing = null;
      while (reader.hasNext()) {
        ProbeReading row = reader.next();
        if (row.probe().equals(settings.probe())) {
          Instant recorded = row.reading().time();
          playing = playing == null ? begin(recorded) : playing;
          long wait = playing.startNanos() + playing.since(recorded).toNanos() - nanos.getAsLong();
          if (closed.await(wait, TimeUnit.NANOSECONDS)) {
            return;
          }
          hand(row.reading(), playing.begin().plus(playing.since(recorded)));
        }
      }
      end(reader.counts(), playing == null);
    } catch (RecordingException e) {
      turn(Condition.LOST, String.valueOf(e.getMessage()));
      tell("recording-unreadable", health.detail(), "Mend the recording and start again.");
    }
  }

  private Playing begin(Instant recorded) {
    return new Playing(recorded, clock.instant().truncatedTo(ChronoUnit.MILLIS), nanos.getAsLong());
  }

  private void hand(Reading reading, Instant time) {
    tally.offered(listener.reading(new Reading(time, reading.millivolts(), reading.celsius())));
    health = new LinkHealth(Condition.READING, "", Optional.of(clock.instant()));
  }

  private void end(RecordingCounts counts, boolean empty) {
    turn(Condition.ENDED, "");
    if (empty) {
      tell(
          "recording-empty",
          "the recording %s has no reading of %s among its %d rows"
              .formatted(settings.file(), settings.probe(), counts.rows()),
          "See that the column probe names it.");
    } else {
      tell("recording-ended", "the recording %s has ended".formatted(settings.file()), "");
    }
  }

  private void reject(RowProblem problem) {
    tally.rejected();
    if (problemsTold < PROBLEMS_TOLD) {
      problemsTold++;
      tell(
          "line-rejected",
          "%s line %d: %s".formatted(settings.file(), problem.line(), problem.reason()),
          problemsTold < PROBLEMS_TOLD
              ? "Mend the row."
              : "Mend the rows; further ones are only counted.");
    }
  }

  private void tell(String code, String text, String remedy) {
    listener.trouble(new LinkTrouble(code, text, remedy));
  }

  private void turn(Condition condition, String detail) {
    health = new LinkHealth(condition, detail, health.lastArrival());
  }

  /**
   * Where the playing began.
   *
   * @param recorded the first reading's time in the recording
   * @param begin the time it was played
   * @param startNanos the same on the pacing clock
   */
  private record Playing(Instant recorded, Instant begin, long startNanos) {

    Duration since(Instant time) {
      return Duration.between(recorded, time);
    }
  }
}
