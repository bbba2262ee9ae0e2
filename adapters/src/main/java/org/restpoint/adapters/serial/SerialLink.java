package org.restpoint.adapters.serial;

import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
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

/**
 * Readings of one probe from a serial port, on one daemon thread named {@code serial port <port>}.
 *
 * <p>A port that cannot be opened or was lost is tried again and again, at most a second apart. The
 * port is open to this process alone. A reading carries the time at which its line ended.
 *
 * <p>A line whose beginning was not seen is not a line: what comes right after opening is passed
 * over to the first terminator, unless a tenth of a second of quiet came before it. Half a line
 * before a loss is forgotten.
 */
public final class SerialLink implements Link {

  private static final Duration FIRST_PAUSE = Duration.ofMillis(100);
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(1);
  private static final Duration PATIENT_CLOSE = Duration.ofMillis(1_200);
  private static final Duration FORCED_CLOSE = Duration.ofMillis(500);

  private final SerialSettings settings;
  private final Path nativeFolder;
  private final LinkListener listener;
  private final Delivery delivery;
  private final SerialNotices notices;
  private final SerialSession.Surroundings surroundings;
  private final OpeningWatch openings = new OpeningWatch();
  private final LinkState state = new LinkState();
  private final LinkThread thread;
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
    this.delivery = new Delivery("serial port " + settings.port().port(), listener, nanos);
    this.notices = new SerialNotices(settings, listener::trouble);
    this.surroundings =
        new SerialSession.Surroundings(settings, clock, nanos, listener, delivery, notices, state);
    this.thread = new LinkThread("serial port " + settings.port().port(), state, this::run);
  }

  @Override
  public void start() {
    state.start("serial port " + settings.port().port());
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
    if (!thread.close(PATIENT_CLOSE)) {
      SerialDevice stuck = device;
      if (stuck != null) {
        stuck.close();
        thread.close(FORCED_CLOSE);
      }
    }
    state.become(Condition.CLOSED, "");
  }

  private void run() throws InterruptedException {
    Duration pause = FIRST_PAUSE;
    while (!thread.isClosing()) {
      boolean worked = openAndRead();
      Duration longer = pause.multipliedBy(2);
      pause = worked ? FIRST_PAUSE : longer.compareTo(LONGEST_PAUSE) < 0 ? longer : LONGEST_PAUSE;
      thread.pause(pause.toNanos());
    }
  }

  /** One attempt, and all reading that follows; true when the port could be read at all. */
  private boolean openAndRead() {
    SerialDevice.Attempt attempt = SerialDevice.open(settings.port(), nativeFolder);
    if (attempt instanceof SerialDevice.Attempt.Refused refused) {
      LinkTrouble trouble = refused.failure().trouble(settings.port().port());
      state.become(Condition.LOST, trouble);
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
    while (!thread.isClosing()) {
      if (!session.step()) {
        if (worked) {
          openings.lost();
          state.become(Condition.LOST, notices.lost());
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
}
