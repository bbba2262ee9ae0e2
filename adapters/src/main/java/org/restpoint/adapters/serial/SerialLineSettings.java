package org.restpoint.adapters.serial;

import org.restpoint.adapters.line.LineFormat;

/**
 * A serial line, whichever probes speak on it.
 *
 * @param port how the port is opened
 * @param format how its bytes become lines
 */
public record SerialLineSettings(PortSettings port, LineFormat format) {

  /** The line's name, for messages. */
  String name() {
    return "serial port " + port.port();
  }
}
