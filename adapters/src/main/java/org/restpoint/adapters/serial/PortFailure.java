package org.restpoint.adapters.serial;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Set;
import org.restpoint.adapters.link.LinkTrouble;

/** Why a serial port could not be opened. */
sealed interface PortFailure {

  /** What to tell people. */
  LinkTrouble trouble(String port);

  /** There is no such device. */
  record Absent() implements PortFailure {
    @Override
    public LinkTrouble trouble(String port) {
      return new LinkTrouble(
          "port-absent",
          "serial port %s is absent".formatted(port),
          "Plug the meter in, or look which ports there are with: restpoint ports");
    }
  }

  /**
   * Another program holds it, or another link of this service.
   *
   * @param byThisService whether it is this service itself
   */
  record Busy(boolean byThisService) implements PortFailure {
    @Override
    public LinkTrouble trouble(String port) {
      return byThisService
          ? new LinkTrouble(
              "port-busy",
              "serial port %s is busy: another probe of this service holds it".formatted(port),
              "Name the port alike for all probes on it, or give each a port of its own")
          : new LinkTrouble(
              "port-busy",
              "serial port %s is busy: another program holds it".formatted(port),
              "Close the other program; which one it is tells: fuser -v %s".formatted(port));
    }
  }

  /**
   * This user may not use it.
   *
   * @param owner who owns the device
   * @param group the group that owns it
   * @param groupMayUse whether members of the group may read and write
   */
  record NotPermitted(String owner, String group, boolean groupMayUse) implements PortFailure {
    @Override
    public LinkTrouble trouble(String port) {
      return new LinkTrouble(
          "port-not-permitted",
          "serial port %s is not permitted to this user".formatted(port),
          groupMayUse
              ? "Add the user to the group that owns it (here: %s)".formatted(group)
              : "Only its owner may use it (here: %s): let its group read and write too, and add the user to that group (here: %s)"
                  .formatted(owner, group));
    }
  }

  /**
   * It is there and cannot be used.
   *
   * @param errorCode the operating system's error number
   */
  record Unusable(int errorCode) implements PortFailure {
    @Override
    public LinkTrouble trouble(String port) {
      return errorCode == NOT_A_TERMINAL
          ? new LinkTrouble(
              "port-unusable",
              "%s is not a serial port".formatted(port),
              "Look which ports there are with: restpoint ports")
          : new LinkTrouble(
              "port-unusable",
              "serial port %s cannot be used: the system answers with error %d"
                  .formatted(port, errorCode),
              "Unplug the meter and plug it in again, and check the speed in the station file");
    }
  }

  /**
   * The native serial library cannot be made ready.
   *
   * @param reason why
   */
  record NoLibrary(String reason) implements PortFailure {
    @Override
    public LinkTrouble trouble(String port) {
      return new LinkTrouble(
          "serial-library",
          "serial port %s cannot be opened: the serial library is not ready: %s"
              .formatted(port, reason),
          "Give the service a folder of its own that only its user can write to");
    }
  }

  /** ENOTTY. */
  int NOT_A_TERMINAL = 25;

  /** EACCES. */
  int NOT_PERMITTED = 13;

  /**
   * Reads the error number that jSerialComm gives when a port does not open: errno, but 2 for a
   * port this process has open already. The lock is {@code flock} (EAGAIN: 11 on Linux, 35 on
   * macOS); a program that set TIOCEXCL instead shows as EBUSY (16), though not to root. ENXIO (6)
   * and ENODEV (19) are a device file with no device behind it.
   *
   * @param path the device's real path
   */
  static PortFailure of(int errorCode, Path path) {
    return switch (errorCode) {
      case 2 -> Files.exists(path) ? new Busy(true) : new Absent();
      case 11, 16, 35 -> new Busy(false);
      case NOT_PERMITTED -> notPermitted(path);
      case 6, 19 -> new Absent();
      default -> new Unusable(errorCode);
    };
  }

  private static PortFailure notPermitted(Path path) {
    try {
      PosixFileAttributes device = Files.readAttributes(path, PosixFileAttributes.class);
      return new NotPermitted(
          device.owner().getName(),
          device.group().getName(),
          device
              .permissions()
              .containsAll(
                  Set.of(PosixFilePermission.GROUP_READ, PosixFilePermission.GROUP_WRITE)));
    } catch (IOException vanished) {
      return new Absent();
    }
  }
}
