package org.restpoint.config.file;

import java.util.Optional;
import org.restpoint.config.station.LinkSettings;

/**
 * That a probe's link opens a serial port.
 *
 * @param probe the probe's name
 * @param kind the kind of link
 * @param keys the link's keys
 * @param port where the port stands among them
 * @param device the port's name as it was written
 * @param link what was understood of the link, unless it was refused
 */
record PortUse(
    String probe, String kind, Entry keys, Entry port, String device, Optional<LinkSettings> link) {

  /**
   * Looks for a port under {@code link}.
   *
   * @param written what stands under {@code link}
   */
  static Optional<PortUse> of(String probe, Entry written, Optional<LinkSettings> link) {
    for (String kind : LinkReader.KINDS) {
      Optional<Entry> port = written.inside(kind, "port");
      Optional<String> device = port.flatMap(Entry::quietText);
      if (device.isPresent()) {
        Entry keys = written.inside(kind).orElse(written);
        return Optional.of(new PortUse(probe, kind, keys, port.orElse(keys), device.get(), link));
      }
    }
    return Optional.empty();
  }
}
