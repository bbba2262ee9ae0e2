package org.restpoint.adapters.recording;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.Delivery;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkState;
import org.restpoint.adapters.link.LinkThread;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.stability.reading.Reading;

/**
 * Plays one probe's rows of a recording at the speed they were made, on a thread of its own. The
 * first reading is stamped with the time it is played, the others keep their distance from it.
 *
 * <p>A recording that cannot be opened is tried again every second. One that fails half-way is not:
 * its beginning would come twice. Counted are this probe's rows and every row that is no reading.
 */
public final class RecordingLink implements Link {

  private static final Duration TRY_AGAIN_AFTER = Duration.ofSeconds(1);
  private static final Duration CLOSE_WITHIN = Duration.ofSeconds(2);

  /** Told one by one up to here, then only counted: a file can have a million of them. */
  private static final int ROWS_TOLD = 5;

  private final RecordingSettings settings;
  private final LinkListener listener;
  private final InstantSource clock;
  private final LongSupplier nanos;
  private final Delivery delivery;
  private final LinkState state = new LinkState();
  private final LinkThread thread;
  private final SkipReport skips = new SkipReport(ROWS_TOLD, this::tell);

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
    this.delivery = new Delivery("the recording " + settings.file(), listener, nanos);
    this.thread = new LinkThread("recording " + settings.probe(), state, this::run);
  }

  @Override
  public void start() {
    state.start("the recording " + settings.file());
    thread.start();
  }

  @Override
  public LinkHealth check() {
    return state.health();
  }

  @Override
  public LinkCounts counts() {
    return delivery.counts();
  }

  @Override
  public void close() {
    thread.close(CLOSE_WITHIN);
    state.become(Condition.CLOSED, "");
  }

  private void run() throws InterruptedException {
    RecordingReader reader = open();
    String told = "";
    while (reader == null) {
      if (!told.equals(check().detail())) {
        told = check().detail();
        tell("recording-unreadable", told, "Put the recording there; it is tried again.");
      }
      if (thread.pause(TRY_AGAIN_AFTER.toNanos())) {
        return;
      }
      reader = open();
    }
    play(reader);
  }

  private @Nullable RecordingReader open() {
    try {
      return RecordingReader.open(settings.file(), settings.layout(), this::skip);
    } catch (RecordingException e) {
      state.become(Condition.LOST, String.valueOf(e.getMessage()));
      return null;
    }
  }

  private void play(RecordingReader reader) throws InterruptedException {
    state.become(Condition.READING, "");
    try (reader) {
      Playing playing = null;
      while (reader.hasNext()) {
        ProbeReading row = reader.next();
        if (row.probe().isEmpty() || row.probe().equals(settings.probe())) {
          Instant recorded = row.reading().time();
          playing = playing == null ? begin(recorded) : playing;
          long wait = playing.startNanos() + playing.since(recorded).toNanos() - nanos.getAsLong();
          if (thread.pause(wait)) {
            return;
          }
          hand(row.reading(), playing.begin().plus(playing.since(recorded)));
        }
      }
      end(reader.counts(), playing == null);
    } catch (RecordingException e) {
      String unreadable = String.valueOf(e.getMessage());
      state.become(Condition.LOST, unreadable);
      tell("recording-unreadable", unreadable, "Mend the recording and start again.");
    }
  }

  private Playing begin(Instant recorded) {
    return new Playing(recorded, clock.instant().truncatedTo(ChronoUnit.MILLIS), nanos.getAsLong());
  }

  private void hand(Reading reading, Instant time) {
    state.arrived(clock.instant());
    delivery.reading(new Reading(time, reading.millivolts(), reading.celsius()));
    delivery.due();
  }

  private void end(RecordingCounts counts, boolean empty) {
    state.become(Condition.ENDED, "");
    skips
        .summary()
        .ifPresent(
            all ->
                tell(
                    "lines-skipped",
                    "of the recording %s were passed over: %s".formatted(settings.file(), all),
                    ""));
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

  private void skip(SkippedLine line) {
    if (line.skip().isRejected()) {
      delivery.rejected();
    }
    skips.accept(line);
  }

  private void tell(SkippedLine line) {
    tell(
        "line-rejected",
        "%s line %d: %s".formatted(settings.file(), line.line(), line.reason()),
        skips.isFull() ? "Mend the rows; further ones are only counted." : "Mend the row.");
  }

  private void tell(String code, String text, String remedy) {
    listener.trouble(new LinkTrouble(code, text, remedy));
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
