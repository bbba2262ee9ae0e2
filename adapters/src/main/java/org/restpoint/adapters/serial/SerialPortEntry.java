package org.restpoint.adapters.serial;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A serial port of this machine and what the system knows of it.
 *
 * @param path the device's path, for the station file
 * @param description what the device calls itself, or what kind of port it is
 * @param usb its USB identity; empty for a port that is not on USB
 * @param manufacturer who made it, where the device says
 * @param stableNames symbolic links that keep naming this device when others are plugged in or out,
 *     in alphabetical order; better in a station file than {@code path}
 */
public record SerialPortEntry(
    String path,
    String description,
    Optional<Usb> usb,
    Optional<String> manufacturer,
    List<Path> stableNames) {

  public SerialPortEntry {
    stableNames = List.copyOf(stableNames);
  }

  /**
   * A USB identity.
   *
   * @param vendor vendor id, 0 to 0xFFFF
   * @param product product id, 0 to 0xFFFF
   * @param serialNumber the device's serial number, where it has one
   */
  public record Usb(int vendor, int product, Optional<String> serialNumber) {

    /** The two ids as they are customarily written: {@code 0403:6001}. */
    public String ids() {
      return "%04x:%04x".formatted(vendor, product);
    }
  }
}
