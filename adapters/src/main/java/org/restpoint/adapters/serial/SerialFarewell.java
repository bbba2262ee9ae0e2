package org.restpoint.adapters.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Closes the lines before the process ends.
 *
 * <p>When a process is told to end, jSerialComm closes all ports in a shutdown hook of its own. A
 * line that is still read would take that for a lost device and tell it; hooks that are registered
 * with jSerialComm come first.
 */
final class SerialFarewell {

  private static final Set<SerialLine> OPEN = ConcurrentHashMap.newKeySet();

  private static boolean registered;

  private SerialFarewell() {}

  /** Closes the links of this line, which has opened its port, when the process ends. */
  static synchronized void add(SerialLine line) {
    OPEN.add(line);
    if (!registered) {
      registered = true;
      SerialPort.addShutdownHook(
          new Thread(() -> OPEN.forEach(SerialLine::close), "serial-farewell"));
    }
  }

  /** The line has closed its port. */
  static void remove(SerialLine line) {
    OPEN.remove(line);
  }
}
