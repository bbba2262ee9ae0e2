package org.restpoint.adapters.serial;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
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

/**
 * Readings of one probe from a serial port, on one daemon thread named {@code link-<port>}.
 *
 * <p>A port that cannot be opened or was lost is tried again and again, at most a second apart. The
 * port is open to this process alone. A reading carries the time at which its line ended.
 *
 * <p>A line whose beginning was not seen is not a line: what comes right after opening is passed
 * over to the first terminator, unless a tenth of a second of quiet came before it. Half a line
 * before a loss is forgotten.
 */
public final class SerialLink implements Link {

  private static final long FIRST_PAUSE_MILLIS = 100;
  private static final long LONGEST_PAUSE_MILLIS = 1_000;
  private static final Duration PATIENT_CLOSE = Duration.ofMillis(1_200);
  private static final Duration FORCED_CLOSE = Duration.ofMillis(500);

  private final SerialSettings settings;
  private final Path nativeFolder;
  private final LinkListener listener;
  private final LinkTally tally = new LinkTally();
  private final SerialNotices notices;
  private final SerialSession.Surroundings surroundings;
  private final OpeningWatch openings = new OpeningWatch();
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Thread thread;
  private volatile LinkHealth health = new LinkHealth(Condition.NEW, "", Optional.empty());
  private volatile @Nullable SerialDevice device;

  /**
   * @param settings which port and how its lines read
   * @param nativeFolder where the native serial library is unpacked, a folder that only this
   *     service's user can write to; made if absent
   * @param clock gives readings their time
   * @param listener is told readings and troubles on the link's thread
   */
  public SerialLink(
      SerialSettings settings, Path nativeFolder, InstantSource clock, LinkListener listener) {
    this(settings, nativeFolder, clock, System::nanoTime, listener);
  }

  /**
   * @param nanos a monotonic clock in nanoseconds, for silences and polls: they are not moved when
   *     the time of day is set
   */
  public SerialLink(
      SerialSettings settings,
      Path nativeFolder,
      InstantSource clock,
      LongSupplier nanos,
      LinkListener listener) {
    this.settings = settings;
    this.nativeFolder = nativeFolder;
    this.listener = listener;
    this.notices = new SerialNotices(settings, listener::trouble);
    this.surroundings =
        new SerialSession.Surroundings(settings, clock, nanos, listener, tally, notices, this::is);
    this.thread = new Thread(this::run, "link-" + settings.port());
    this.thread.setDaemon(true);
  }

  /**
   * Begins to read.
   *
   * @throws IllegalStateException when it was started or closed before
   */
  @Override
  public synchronized void start() {
    if (health.condition() != Condition.NEW) {
      throw new IllegalStateException(
          "the link to %s was started or closed before".formatted(settings.port()));
    }
    is(Condition.OPENING, "", Optional.empty());
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
    closing.countDown();
    if (Thread.currentThread() != thread && !ended(PATIENT_CLOSE)) {
      SerialDevice stuck = device;
      if (stuck != null) {
        stuck.close();
        ended(FORCED_CLOSE);
      }
    }
    is(Condition.CLOSED, "", Optional.empty());
  }

  /** Waits for the thread; true when it is not running, also when it never was. */
  private boolean ended(Duration patience) {
    try {
      thread.join(patience.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return !thread.isAlive();
  }

  private void run() {
    try {
      long pauseMillis = FIRST_PAUSE_MILLIS;
      while (!isClosing()) {
        boolean worked = openAndRead();
        pauseMillis = worked ? FIRST_PAUSE_MILLIS : Math.min(2 * pauseMillis, LONGEST_PAUSE_MILLIS);
        pause(pauseMillis);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      is(
          Condition.LOST,
          "the link to serial port %s has stopped reading".formatted(settings.port()),
          Optional.empty());
    }
  }

  /** One attempt, and all reading that follows; true when the port could be read at all. */
  private boolean openAndRead() {
    SerialDevice.Attempt attempt =
        SerialDevice.open(settings.port(), settings.baud(), nativeFolder);
    if (attempt instanceof SerialDevice.Attempt.Refused refused) {
      LinkTrouble trouble = refused.failure().trouble(settings.port());
      is(Condition.LOST, trouble);
      openings.refused(refused.failure()).ifPresent(told -> listener.trouble(trouble));
    } else if (attempt instanceof SerialDevice.Attempt.Opened opened) {
      try (SerialDevice open = opened.device()) {
        device = open;
        SerialFarewell.add(this);
        return read(new SerialSession(open, surroundings));
      } finally {
        device = null;
        SerialFarewell.remove(this);
      }
    }
    return false;
  }

  private boolean read(SerialSession session) {
    boolean worked = false;
    while (!isClosing()) {
      if (!session.step()) {
        if (worked) {
          openings.lost();
          is(Condition.LOST, notices.lost());
          listener.trouble(notices.lost());
        }
        return worked;
      }
      if (!worked) {
        worked = true;
        if (openings.opened()) {
          listener.trouble(notices.back());
        }
      }
    }
    return worked;
  }

  private void is(Condition condition, LinkTrouble trouble) {
    is(condition, trouble.text() + ". " + trouble.remedy(), Optional.empty());
  }

  /** Notes how the link is; a closed link stays closed, and a last arrival is kept. */
  private synchronized void is(Condition condition, String detail, Optional<Instant> arrival) {
    if (health.condition() != Condition.CLOSED) {
      health = new LinkHealth(condition, detail, arrival.or(health::lastArrival));
    }
  }

  private boolean isClosing() {
    return closing.getCount() == 0;
  }

  private void pause(long millis) throws InterruptedException {
    closing.await(millis, TimeUnit.MILLISECONDS);
  }
}
