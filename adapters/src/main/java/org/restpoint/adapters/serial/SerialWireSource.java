package org.restpoint.adapters.serial;

import java.nio.file.Path;
import org.restpoint.adapters.wire.WireSource;

/** A serial port as the wire of a bus. */
public final class SerialWireSource implements WireSource {

  private final PortSettings settings;
  private final Path nativeFolder;

  /**
   * @param settings which port and how it is opened
   * @param nativeFolder where the native serial library is unpacked, a folder that only this
   *     service's user can write to; made if absent
   */
  public SerialWireSource(PortSettings settings, Path nativeFolder) {
    this.settings = settings;
    this.nativeFolder = nativeFolder;
  }

  @Override
  public String name() {
    return "serial port " + settings.port();
  }

  @Override
  public Attempt open() {
    SerialDevice.Attempt attempt = SerialDevice.open(settings, nativeFolder);
    if (attempt instanceof SerialDevice.Attempt.Opened opened) {
      return new Attempt.Opened(opened.device());
    }
    PortFailure failure = ((SerialDevice.Attempt.Refused) attempt).failure();
    return new Attempt.Refused(failure.trouble(settings.port()));
  }
}
