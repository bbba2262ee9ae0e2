package org.restpoint.adapters.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Closes the links before the process ends.
 *
 * <p>When a process is told to end, jSerialComm closes all ports in a shutdown hook of its own. A
 * link that still reads would take that for a lost device and tell it; hooks that are registered
 * with jSerialComm come first.
 */
final class SerialFarewell {

  private static final Map<Object, Runnable> OPEN = new ConcurrentHashMap<>();

  private static boolean registered;

  private SerialFarewell() {}

  /** Closes the links of this line, which has opened its port, when the process ends. */
  static void add(SerialLine line) {
    add(line, line::close);
  }

  /**
   * Runs this when the process ends.
   *
   * @param owner who has opened a port
   */
  static synchronized void add(Object owner, Runnable farewell) {
    OPEN.put(owner, farewell);
    if (!registered) {
      registered = true;
      SerialPort.addShutdownHook(
          new Thread(() -> OPEN.values().forEach(Runnable::run), "serial-farewell"));
    }
  }

  /** The owner has closed its port. */
  static void remove(Object owner) {
    OPEN.remove(owner);
  }
}
