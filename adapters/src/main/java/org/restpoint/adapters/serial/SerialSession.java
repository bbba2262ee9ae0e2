package org.restpoint.adapters.serial;

import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.restpoint.adapters.line.LineChecksum.Checked;
import org.restpoint.adapters.line.LineFormat;
import org.restpoint.adapters.line.LineFraming;
import org.restpoint.adapters.line.LineReading;
import org.restpoint.adapters.link.LinkTrouble;

/** One time that a port is open: asks, reads lines for all links, and watches for silence. */
final class SerialSession implements LineFraming.Lines {

  private static final int READ_BYTES = 1024;

  private final SerialDevice device;
  private final LineFormat format;
  private final InstantSource clock;
  private final LongSupplier nanos;
  private final List<SerialLink> links;
  private final LineFraming framing;
  private final Asks asks;
  private final byte[] bytes = new byte[READ_BYTES];
  private boolean joined;
  private boolean silenceTold;
  private long lineNanos;

  SerialSession(
      SerialDevice device,
      SerialLineSettings settings,
      InstantSource clock,
      LongSupplier nanos,
      List<SerialLink> links) {
    this.device = device;
    this.format = settings.format();
    this.clock = clock;
    this.nanos = nanos;
    this.links = links;
    this.framing = new LineFraming(format.end(), format.encoding());
    this.lineNanos = nanos.getAsLong();
    this.asks = new Asks(lineNanos);
    framing.skip();
  }

  /**
   * Asks if it is time to, waits a moment for bytes and takes what came.
   *
   * @return false when the device is gone
   */
  boolean step() {
    if (joined && !ask()) {
      return false;
    }
    int count = device.read(bytes);
    if (count < 0) {
      return false;
    }
    if (count > 0) {
      framing.accept(bytes, count, this);
    } else if (joined) {
      framing.pause(this);
    } else {
      framing.reset();
    }
    // The beginning of a line is known after a quiet moment, or once its mark was seen.
    joined |= !framing.skipping();
    watch();
    return true;
  }

  private boolean ask() {
    List<SerialSettings> asked =
        links.stream().map(SerialLink::settings).filter(each -> each.poll().isPresent()).toList();
    if (asked.isEmpty()) {
      return true;
    }
    List<String> polls = asked.stream().flatMap(each -> each.poll().stream()).distinct().toList();
    Optional<String> ask = asks.due(polls, asked.get(0).pollEvery(), nanos.getAsLong());
    return ask.isEmpty() || device.write(format.encoding().bytes(ask.get()));
  }

  private void watch() {
    boolean unfinished = framing.heldBytes() > 0 || framing.skipping();
    for (SerialLink link : links) {
      long now = nanos.getAsLong();
      link.opened(now, joined);
      silenceTold |= link.watch(now, lineNanos, unfinished, silenceTold);
    }
  }

  /** The device is gone, while it was read. */
  void lost() {
    framing.cutOff(this);
    first(
        link -> {
          LinkTrouble trouble = link.notices().lost();
          links.forEach(each -> each.lost(trouble));
          link.tell(trouble);
        });
  }

  @Override
  public void line(String text) {
    Instant time = clock.instant();
    long now = came();
    Checked checked = format.checksum().checked(text, format.encoding());
    if (checked instanceof Checked.Wrong wrong) {
      nobodys(time, now);
      first(link -> link.notices().checksumWrong(text, wrong.reason(), now));
    } else if (checked instanceof Checked.Sound sound) {
      hand(sound.line(), time, now);
    }
  }

  private void hand(String text, Instant time, long now) {
    boolean read = false;
    String channel = null;
    String reason = "";
    for (SerialLink link : links) {
      LineReading found = link.read(text);
      if (found instanceof LineReading.Own own) {
        read = true;
        link.take(own.said(), text, time, now);
      } else if (found instanceof LineReading.OfChannel other) {
        channel = other.channel();
      } else if (found instanceof LineReading.Unread unread) {
        reason = unread.reason();
      }
    }
    if (!read && channel != null) {
      unclaimed(channel);
    } else if (!read) {
      rejected(text, reason, time, now);
    }
  }

  private void unclaimed(String channel) {
    links.forEach(SerialLink::countUnclaimed);
    first(link -> link.notices().unclaimed(channel));
  }

  @Override
  public void broken(String text, String reason) {
    rejected(text, reason, clock.instant(), came());
  }

  private void rejected(String text, String reason, Instant time, long now) {
    nobodys(time, now);
    first(link -> link.notices().rejected(text, reason, now));
  }

  @Override
  public void tooLong() {
    Instant time = clock.instant();
    long now = came();
    nobodys(time, now);
    first(link -> link.notices().tooLong(now));
  }

  private void nobodys(Instant time, long now) {
    links.forEach(link -> link.takeNobodys(time, now));
  }

  /** Something has come that is a line or was to be one. */
  private long came() {
    long now = nanos.getAsLong();
    lineNanos = now;
    silenceTold = false;
    links.forEach(link -> link.portSpeaks(now));
    return now;
  }

  private void first(Consumer<SerialLink> work) {
    links.stream().findFirst().ifPresent(work);
  }
}
