package org.restpoint.adapters.serial;

import java.nio.file.Path;
import org.restpoint.adapters.link.LinkTrouble;
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
  public Attempt open(Runnable farewell) {
    SerialDevice.Attempt attempt = SerialDevice.open(settings, nativeFolder);
    if (attempt instanceof SerialDevice.Attempt.Opened opened) {
      return new Attempt.Opened(new FarewellWire(opened.device(), farewell));
    }
    PortFailure failure = ((SerialDevice.Attempt.Refused) attempt).failure();
    return new Attempt.Refused(
        failure.trouble(settings.port()), failure instanceof PortFailure.Absent);
  }

  @Override
  public LinkTrouble lost() {
    return new LinkTrouble(
        "port-lost",
        "%s was lost while it was read".formatted(name()),
        "Plug the device in again; reading goes on by itself");
  }

  @Override
  public LinkTrouble back() {
    return new LinkTrouble("port-back", "%s is there and open".formatted(name()), "");
  }
}
