package org.restpoint.adapters.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * An open serial port.
 *
 * <p>jSerialComm's own word on whether a port is open stays true after an unplug and is not used; a
 * port is gone when reading or writing says so.
 */
final class SerialDevice implements AutoCloseable {

  /** How long a read waits for a first byte; the driver counts in tenths of a second. */
  static final int READ_TIMEOUT_MILLIS = 100;

  private static final int READ_BYTES = 1024;
  private static final String DEVICES = "/dev";

  private final SerialPort port;
  private final byte[] buffer = new byte[READ_BYTES];

  private SerialDevice(SerialPort port) {
    this.port = port;
  }

  /** What trying to open a port came to. */
  sealed interface Attempt {

    /** The port is open; whoever takes it closes it. */
    record Opened(SerialDevice device) implements Attempt {}

    /** The port is not open. */
    record Refused(PortFailure failure) implements Attempt {}
  }

  /**
   * Opens a port for this process alone.
   *
   * @param name the device's path, or its bare name under {@code /dev}
   * @param nativeFolder the private folder of the native library
   */
  static Attempt open(String name, int baud, Path nativeFolder) {
    Path path = path(name);
    if (!Files.exists(path)) {
      return new Attempt.Refused(new PortFailure.Absent());
    }
    try {
      SerialLibrary.prepare(nativeFolder);
      // A path that vanished since would make jSerialComm fall back on a name under /dev, which can
      // be another device: it is given the real path, or none.
      String realPath = path.toRealPath().toString();
      return SerialLibrary.alone(() -> open(realPath, baud));
    } catch (IOException e) {
      return new Attempt.Refused(
          Files.exists(path)
              ? new PortFailure.NoLibrary(String.valueOf(e.getMessage()))
              : new PortFailure.Absent());
    } catch (LinkageError e) {
      return new Attempt.Refused(new PortFailure.NoLibrary(String.valueOf(e.getMessage())));
    }
  }

  private static Attempt open(String realPath, int baud) {
    SerialPort port;
    try {
      port = SerialPort.getCommPort(realPath);
    } catch (SerialPortInvalidPortException vanished) {
      return new Attempt.Refused(new PortFailure.Absent());
    }
    if (!port.getSystemPortPath().equals(realPath)) {
      return new Attempt.Refused(new PortFailure.Absent());
    }
    port.setComPortParameters(baud, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_TIMEOUT_MILLIS, 0);
    if (!port.openPort(0)) {
      return new Attempt.Refused(PortFailure.of(port.getLastErrorCode(), Path.of(realPath)));
    }
    // What a driver or a bridge kept from before is older than the time it would be given.
    port.flushIOBuffers();
    return new Attempt.Opened(new SerialDevice(port));
  }

  /** The path of a device named in full or by its bare name. */
  static Path path(String name) {
    Path path = Path.of(name);
    return path.getNameCount() == 1 && !path.isAbsolute() ? Path.of(DEVICES).resolve(path) : path;
  }

  /**
   * Waits up to {@link #READ_TIMEOUT_MILLIS} for bytes.
   *
   * @return how many came, from the first of {@link #bytes()}; 0 when none came in time; below zero
   *     when the device is gone
   */
  int read() {
    return port.readBytes(buffer, buffer.length);
  }

  /** Where {@link #read()} puts what came. */
  byte[] bytes() {
    return buffer;
  }

  /**
   * Sends text, one byte a character.
   *
   * @return false when the device is gone
   */
  boolean write(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
    return port.writeBytes(bytes, bytes.length) >= 0;
  }

  /** Closes the port; a read or write under way in another thread returns. */
  @Override
  public void close() {
    port.closePort();
  }
}
