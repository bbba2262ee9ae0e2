package org.restpoint.adapters.serial;

import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.LinkState;
import org.restpoint.adapters.link.LinkThread;
import org.restpoint.adapters.link.LinkTrouble;

/** The thread that opens a port, reads it for all links of its line, and opens it again. */
final class PortReader {

  private static final Duration PATIENT_CLOSE = Duration.ofMillis(1_200);
  private static final Duration FORCED_CLOSE = Duration.ofMillis(500);

  private final SerialLineSettings settings;
  private final Path nativeFolder;
  private final InstantSource clock;
  private final LongSupplier nanos;
  private final SerialLine line;
  private final List<SerialLink> links;
  private final OpeningWatch openings = new OpeningWatch();
  private final LinkThread thread;
  private volatile @Nullable SerialDevice device;

  /**
   * @param line closed when the process ends
   * @param links whom it reads for; they come and go
   */
  PortReader(
      SerialLineSettings settings,
      Path nativeFolder,
      InstantSource clock,
      LongSupplier nanos,
      SerialLine line,
      List<SerialLink> links) {
    this.settings = settings;
    this.nativeFolder = nativeFolder;
    this.clock = clock;
    this.nanos = nanos;
    this.line = line;
    this.links = links;
    this.thread = new LinkThread(settings.name(), new LinkState(), this::run);
  }

  void start() {
    thread.start();
  }

  /** Ends the thread and closes the port; bounded, and called on the thread itself at once. */
  void close() {
    if (!thread.close(PATIENT_CLOSE)) {
      SerialDevice stuck = device;
      if (stuck != null) {
        stuck.close();
        thread.close(FORCED_CLOSE);
      }
    }
  }

  private void run() throws InterruptedException {
    boolean done = false;
    try {
      RetryPause pause = new RetryPause();
      while (!thread.isClosing()) {
        thread.pause(pause.after(openAndRead()).toNanos());
      }
      done = true;
    } finally {
      if (!done) {
        LinkTrouble defect =
            new LinkTrouble("port-unusable", settings.name() + " is read no more", "");
        links.forEach(link -> link.lost(defect));
      }
    }
  }

  /** One attempt, and all reading that follows; true when the port could be read at all. */
  private boolean openAndRead() {
    SerialDevice.Attempt attempt = SerialDevice.open(settings.port(), nativeFolder);
    if (attempt instanceof SerialDevice.Attempt.Refused refused) {
      LinkTrouble trouble = refused.failure().trouble(settings.port().port());
      links.forEach(link -> link.lost(trouble));
      openings.refused(refused.failure()).ifPresent(told -> tell(trouble));
    } else if (attempt instanceof SerialDevice.Attempt.Opened opened) {
      try (SerialDevice open = opened.device()) {
        device = open;
        SerialFarewell.add(line);
        return read(new SerialSession(open, settings, clock, nanos, links));
      } finally {
        device = null;
        SerialFarewell.remove(line);
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
          session.lost();
        }
        return worked;
      }
      if (!worked) {
        worked = true;
        if (openings.opened()) {
          first().ifPresent(link -> link.tell(link.notices().back()));
        }
      }
    }
    return worked;
  }

  private void tell(LinkTrouble trouble) {
    first().ifPresent(link -> link.tell(trouble));
  }

  private Optional<SerialLink> first() {
    return links.stream().findFirst();
  }
}
