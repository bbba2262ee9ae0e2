package org.restpoint.adapters.serial;

import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.LinkListener;

/**
 * A serial port that one probe or several speak on, read by one daemon thread named {@code serial
 * port <port>} while at least one of its links is started and not closed.
 *
 * <p>A port that cannot be opened or was lost is tried again and again, at most a second apart. The
 * port is open to this process alone. What happens to the port is told once, by the link that was
 * started first; the health of every link shows it.
 *
 * <p>A line whose beginning was not seen is not a line: what comes right after opening is passed
 * over to the first mark, unless a tenth of a second of quiet came before it.
 *
 * <p>Every link looks at every line. It has received those that its pattern matches and that are of
 * its channel, where it has one, and those that no link of the port reads: nobody knows whose those
 * are, so each link counts them as rejected; they are told once.
 */
public final class SerialLine {

  private final SerialLineSettings settings;
  private final Path nativeFolder;
  private final InstantSource clock;
  private final LongSupplier nanos;

  /** Those that are started and not closed, in that order; each reader has a list of its own. */
  private volatile List<SerialLink> links = List.of();

  private @Nullable PortReader reader;

  /**
   * Prepares a line; it opens nothing before a link of it is started.
   *
   * @param settings which port and how its bytes become lines
   * @param nativeFolder where the native serial library is unpacked, a folder that only this
   *     service's user can write to; made if absent
   * @param clock gives readings their time
   * @param nanos a monotonic clock in nanoseconds, for silences and polls: they are not moved when
   *     the time of day is set
   */
  public SerialLine(
      SerialLineSettings settings, Path nativeFolder, InstantSource clock, LongSupplier nanos) {
    this.settings = settings;
    this.nativeFolder = nativeFolder;
    this.clock = clock;
    this.nanos = nanos;
  }

  /**
   * Prepares the link of one probe.
   *
   * @param probe how its readings are found in the lines
   * @param listener is told its readings and troubles on the line's thread
   */
  public SerialLink link(SerialSettings probe, LinkListener listener) {
    return new SerialLink(this, settings, probe, listener, nanos);
  }

  synchronized void add(SerialLink link) {
    if (reader == null) {
      links = new CopyOnWriteArrayList<>();
      reader = new PortReader(settings, nativeFolder, clock, nanos, this, links);
      links.add(link);
      reader.start();
    } else {
      links.add(link);
    }
  }

  /** A link wants no more; the last one closes the port, within 2 s. */
  void remove(SerialLink link) {
    PortReader ended = null;
    synchronized (this) {
      if (reader != null && links.remove(link) && links.isEmpty()) {
        ended = reader;
        reader = null;
      }
    }
    if (ended != null) {
      ended.close();
    }
  }

  /** Closes every link, and with the last of them the port. */
  void close() {
    links.forEach(SerialLink::close);
  }
}
