package org.restpoint.adapters.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.restpoint.adapters.link.LinkTrouble;

/** The serial ports of this machine. */
public final class SerialPorts {

  /** Where udev keeps names that stay with a device. */
  private static final List<Path> STABLE_NAMES =
      List.of(Path.of("/dev/serial/by-id"), Path.of("/dev/serial/by-path"));

  private SerialPorts() {}

  /**
   * All serial ports, in the order of their paths; opens none of them.
   *
   * @param nativeFolder where the native serial library is unpacked, a folder that only this user
   *     can write to; made if absent
   * @throws IOException when the native library cannot be made ready there
   */
  public static List<SerialPortEntry> list(Path nativeFolder) throws IOException {
    SerialLibrary.prepare(nativeFolder);
    try {
      return Arrays.stream(SerialLibrary.alone(SerialPort::getCommPorts))
          .map(SerialPorts::entry)
          .sorted(Comparator.comparing(SerialPortEntry::path))
          .toList();
    } catch (LinkageError e) {
      throw new IOException("the serial library does not load: " + e.getMessage(), e);
    }
  }

  private static SerialPortEntry entry(SerialPort port) {
    String path = port.getSystemPortPath();
    Optional<SerialPortEntry.Usb> usb =
        port.getVendorID() < 0 || port.getProductID() < 0
            ? Optional.empty()
            : Optional.of(
                new SerialPortEntry.Usb(
                    port.getVendorID(), port.getProductID(), known(port.getSerialNumber())));
    return new SerialPortEntry(
        path,
        port.getPortDescription(),
        usb,
        known(port.getManufacturer()),
        stableNames(Path.of(path), STABLE_NAMES));
  }

  /** jSerialComm writes "Unknown" for what the device does not say. */
  private static Optional<String> known(String text) {
    return text.isBlank() || text.equals("Unknown") ? Optional.empty() : Optional.of(text);
  }

  /**
   * The best name of a port for a station file: one that stays with the device where udev keeps
   * one, and otherwise what it was called.
   *
   * @param port a path, or a bare name under {@code /dev}
   */
  public static String stableName(String port) {
    return stableName(port, STABLE_NAMES);
  }

  static String stableName(String port, List<Path> folders) {
    Path path = SerialDevice.path(port);
    boolean stable = folders.stream().anyMatch(path::startsWith);
    return stable
        ? port
        : stableNames(path, folders).stream().findFirst().map(Path::toString).orElse(port);
  }

  /**
   * Why this user may not use a port, and what to do about it; empty where it may. Opens nothing.
   */
  public static Optional<LinkTrouble> notPermitted(String path) {
    Path device = Path.of(path);
    return Files.isReadable(device) && Files.isWritable(device)
        ? Optional.empty()
        : Optional.of(PortFailure.of(PortFailure.NOT_PERMITTED, device).trouble(path));
  }

  /** The symbolic links in {@code folders} that lead to {@code device}. */
  static List<Path> stableNames(Path device, List<Path> folders) {
    List<Path> names = new ArrayList<>();
    for (Path folder : folders) {
      try {
        names.addAll(linksTo(device, folder));
      } catch (IOException | DirectoryIteratorException unreadable) {
        // The names only help to choose; a port is listed without them as well.
      }
    }
    names.sort(Comparator.naturalOrder());
    return names;
  }

  private static List<Path> linksTo(Path device, Path folder) throws IOException {
    List<Path> found = new ArrayList<>();
    if (Files.isDirectory(folder)) {
      try (DirectoryStream<Path> links = Files.newDirectoryStream(folder)) {
        for (Path link : links) {
          if (Files.isSymbolicLink(link) && leadsTo(link, device)) {
            found.add(link);
          }
        }
      }
    }
    return found;
  }

  private static boolean leadsTo(Path link, Path device) throws IOException {
    return Files.exists(link) && link.toRealPath().equals(device.toRealPath());
  }
}
