package org.restpoint.adapters.serial;

import java.time.Instant;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.LongSupplier;
import org.restpoint.adapters.line.LinePattern;
import org.restpoint.adapters.line.LineReading;
import org.restpoint.adapters.link.Delivery;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkState;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.quantity.Parsed;

/**
 * Readings of one probe from the lines of a {@link SerialLine}. A reading carries the time at which
 * its line ended.
 */
public final class SerialLink implements Link {

  private static final long CLOSE_MILLIS = 200;

  private final SerialLine line;
  private final String name;
  private final SerialSettings settings;
  private final LinkListener listener;
  private final LinePattern pattern;
  private final Delivery delivery;
  private final SerialNotices notices;
  private final LinkState state = new LinkState();
  private final ReentrantLock handing = new ReentrantLock();
  private boolean open;
  private boolean reading;
  private Silence silence = Silence.NONE;
  private long quietSinceNanos;

  /** What is known of a silence that lasts. */
  private enum Silence {
    NONE,
    OF_PORT,
    OF_PORT_TOLD,
    OF_PROBE
  }

  SerialLink(
      SerialLine line,
      SerialLineSettings lineSettings,
      SerialSettings settings,
      LinkListener listener,
      LongSupplier nanos) {
    this.line = line;
    this.name = lineSettings.name();
    this.settings = settings;
    this.listener = listener;
    this.pattern =
        new LinePattern(settings.line(), settings.meaning(), settings.mark(), settings.channel());
    this.delivery = new Delivery(name, listener, nanos);
    this.notices = new SerialNotices(lineSettings, settings, this::tell);
  }

  @Override
  public void start() {
    state.start(name);
    line.add(this);
    if (state.condition() == Condition.CLOSED) {
      // It was closed by another thread meanwhile.
      line.remove(this);
    }
  }

  @Override
  public LinkHealth check() {
    return state.health();
  }

  @Override
  public LinkCounts counts() {
    return delivery.counts();
  }

  /**
   * Takes no more readings, and waits for one that is just being handed over; the port stays open
   * for the other links of the line.
   */
  @Override
  public void close() {
    state.become(Condition.CLOSED, "");
    line.remove(this);
    try {
      if (handing.tryLock(CLOSE_MILLIS, TimeUnit.MILLISECONDS)) {
        handing.unlock();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  SerialSettings settings() {
    return settings;
  }

  SerialNotices notices() {
    return notices;
  }

  /** Tells a trouble, unless the link is closed. */
  void tell(LinkTrouble trouble) {
    whileOpen(() -> listener.trouble(trouble));
  }

  private void whileOpen(Runnable work) {
    handing.lock();
    try {
      if (state.condition() != Condition.CLOSED) {
        work.run();
      }
    } finally {
      handing.unlock();
    }
  }

  /**
   * The port is open: from here on silence counts. Told again and again while it is.
   *
   * @param begun whether the beginning of a line is known, so that lines are read
   */
  void opened(long now, boolean begun) {
    if (!open) {
      open = true;
      reading = false;
      silence = Silence.NONE;
      quietSinceNanos = now;
    }
    if (begun && !reading) {
      reading = true;
      if (silence == Silence.NONE) {
        state.become(Condition.READING, "");
      }
    }
  }

  /** The port is not open. */
  void lost(LinkTrouble why) {
    open = false;
    state.become(Condition.LOST, why);
  }

  /** What the probe's pattern finds in a line. */
  LineReading read(String text) {
    return pattern.read(text);
  }

  /** A line of this probe. */
  void take(Parsed said, String text, Instant time, long now) {
    whileOpen(
        () -> {
          heard(time, now);
          if (said instanceof Parsed.Values values) {
            delivery.reading(values.at(time));
          } else if (said instanceof Parsed.Rejected rejected) {
            delivery.rejected();
            notices.rejected(text, rejected.reason(), now);
          }
        });
  }

  /** A line that no probe of the port can read; it may have been this one's. */
  void takeNobodys(Instant time, long now) {
    whileOpen(
        () -> {
          heard(time, now);
          delivery.rejected();
        });
  }

  /** A line of a channel that no probe has: it was not this one's. */
  void countUnclaimed() {
    whileOpen(delivery::rejected);
  }

  private void heard(Instant time, long now) {
    if (silence == Silence.OF_PROBE) {
      listener.trouble(notices.dataBack());
    }
    silence = Silence.NONE;
    quietSinceNanos = now;
    state.arrived(time);
  }

  /** A line came, whoever's it is: the port is not silent. */
  void portSpeaks(long now) {
    if (silence == Silence.OF_PORT || silence == Silence.OF_PORT_TOLD) {
      boolean told = silence == Silence.OF_PORT_TOLD;
      silence = Silence.NONE;
      quietSinceNanos = now;
      state.become(Condition.READING, "");
      if (told) {
        tell(notices.dataBack());
      }
    }
  }

  /**
   * Tells what has fallen due, a long silence too.
   *
   * @param lineNanos when a line came last, whoever's it was
   * @param unfinished whether bytes have come since, but no end of a line
   * @param told whether a silence of the port is told already
   * @return true when this link has now told the silence of the port
   */
  boolean watch(long now, long lineNanos, boolean unfinished, boolean told) {
    whileOpen(
        () -> {
          notices.due(now);
          delivery.due();
        });
    long limit = settings.noDataAfter().toNanos();
    long portQuiet = now - lineNanos;
    // The lines of a port that falls silent end one after the other: which of the two it is, is
    // known once others have been heard a short time ago, or not for as long as this probe.
    boolean speaks = portQuiet < limit / 2;
    if (!open
        || silence != Silence.NONE
        || now - quietSinceNanos < limit
        || (!speaks && portQuiet < limit)) {
      return false;
    }
    silence = speaks ? Silence.OF_PROBE : told ? Silence.OF_PORT : Silence.OF_PORT_TOLD;
    LinkTrouble trouble = speaks ? notices.noDataOfProbe() : notices.noData(unfinished);
    state.become(Condition.SILENT, trouble);
    if (silence != Silence.OF_PORT) {
      tell(trouble);
    }
    return silence == Silence.OF_PORT_TOLD;
  }
}
