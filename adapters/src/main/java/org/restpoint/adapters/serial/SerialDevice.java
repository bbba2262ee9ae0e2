package org.restpoint.adapters.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.restpoint.adapters.serial.PortSettings.StopBits;
import org.restpoint.adapters.wire.Wire;

/**
 * An open serial port.
 *
 * <p>jSerialComm's own word on whether a port is open stays true after an unplug and is not used; a
 * port is gone when reading or writing says so.
 */
final class SerialDevice implements Wire {

  /** How long a read waits for a first byte; the driver counts in tenths of a second. */
  static final int READ_TIMEOUT_MILLIS = 100;

  private static final String DEVICES = "/dev";

  private final SerialPort port;

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
   * @param settings which port and how
   * @param nativeFolder the private folder of the native library
   */
  static Attempt open(PortSettings settings, Path nativeFolder) {
    Path path = path(settings.port());
    if (!Files.exists(path)) {
      return new Attempt.Refused(new PortFailure.Absent());
    }
    try {
      SerialLibrary.prepare(nativeFolder);
      // A path that vanished since would make jSerialComm fall back on a name under /dev, which can
      // be another device: it is given the real path, or none.
      String realPath = path.toRealPath().toString();
      return SerialLibrary.alone(() -> open(realPath, settings));
    } catch (IOException e) {
      return new Attempt.Refused(
          Files.exists(path)
              ? new PortFailure.NoLibrary(String.valueOf(e.getMessage()))
              : new PortFailure.Absent());
    } catch (LinkageError e) {
      return new Attempt.Refused(new PortFailure.NoLibrary(String.valueOf(e.getMessage())));
    }
  }

  private static Attempt open(String realPath, PortSettings settings) {
    SerialPort port;
    try {
      port = SerialPort.getCommPort(realPath);
    } catch (SerialPortInvalidPortException vanished) {
      return new Attempt.Refused(new PortFailure.Absent());
    }
    if (!port.getSystemPortPath().equals(realPath)) {
      return new Attempt.Refused(new PortFailure.Absent());
    }
    port.setComPortParameters(
        settings.baud(),
        settings.dataBits(),
        settings.stopBits() == StopBits.TWO ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT,
        parity(settings.parity()));
    port.setFlowControl(flowControl(settings.handshake()));
    raise(port, settings);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_TIMEOUT_MILLIS, 0);
    if (!port.openPort(0)) {
      return new Attempt.Refused(PortFailure.of(port.getLastErrorCode(), Path.of(realPath)));
    }
    // What a driver or a bridge kept from before is older than the time it would be given.
    port.flushIOBuffers();
    return new Attempt.Opened(new SerialDevice(port));
  }

  private static int parity(PortSettings.Parity parity) {
    return switch (parity) {
      case NONE -> SerialPort.NO_PARITY;
      case EVEN -> SerialPort.EVEN_PARITY;
      case ODD -> SerialPort.ODD_PARITY;
      case MARK -> SerialPort.MARK_PARITY;
      case SPACE -> SerialPort.SPACE_PARITY;
    };
  }

  private static int flowControl(PortSettings.Handshake handshake) {
    return switch (handshake) {
      case NONE -> SerialPort.FLOW_CONTROL_DISABLED;
      case REQUEST_TO_SEND ->
          SerialPort.FLOW_CONTROL_RTS_ENABLED | SerialPort.FLOW_CONTROL_CTS_ENABLED;
      case XON_XOFF ->
          SerialPort.FLOW_CONTROL_XONXOFF_IN_ENABLED | SerialPort.FLOW_CONTROL_XONXOFF_OUT_ENABLED;
    };
  }

  /** Before the port is open this says how the lines stand as it opens. */
  private static void raise(SerialPort port, PortSettings settings) {
    if (settings.dtr()) {
      port.setDTR();
    } else {
      port.clearDTR();
    }
    if (settings.rts()) {
      port.setRTS();
    } else {
      port.clearRTS();
    }
  }

  /** The path of a device named in full or by its bare name. */
  static Path path(String name) {
    Path path = Path.of(name);
    return path.getNameCount() == 1 && !path.isAbsolute() ? Path.of(DEVICES).resolve(path) : path;
  }

  @Override
  public int read(byte[] into) {
    return port.readBytes(into, into.length);
  }

  @Override
  public boolean write(byte[] bytes) {
    return port.writeBytes(bytes, bytes.length) >= 0;
  }

  @Override
  public void discardInput() {
    port.flushIOBuffers();
  }

  @Override
  public void close() {
    port.closePort();
  }
}
