package org.restpoint.adapters.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Closes the links before the process ends.
 *
 * <p>When a process is told to end, jSerialComm closes all ports in a shutdown hook of its own. A
 * link that still reads would take that for a lost device and tell it; hooks that are registered
 * with jSerialComm come first.
 */
final class SerialFarewell {

  private static final Set<SerialLink> OPEN = ConcurrentHashMap.newKeySet();

  private static boolean registered;

  private SerialFarewell() {}

  /** Closes this link, which has opened its port, when the process ends. */
  static synchronized void add(SerialLink link) {
    OPEN.add(link);
    if (!registered) {
      registered = true;
      SerialPort.addShutdownHook(
          new Thread(() -> OPEN.forEach(SerialLink::close), "serial-farewell"));
    }
  }

  /** The link has closed its port. */
  static void remove(SerialLink link) {
    OPEN.remove(link);
  }
}
