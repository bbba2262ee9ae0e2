package org.restpoint.adapters.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class SerialPortsTest {

  @TempDir private Path folder;

  @Test
  @EnabledOnOs(OS.LINUX)
  void thePortsOfThisMachineComeInOrderAndAreThere() throws Exception {
    List<SerialPortEntry> ports = SerialPorts.list(folder.resolve("native"));
    assertThat(ports).extracting(SerialPortEntry::path).isSorted();
    assertThat(ports).allSatisfy(port -> assertThat(Path.of(port.path())).exists());
  }

  @Test
  void theNamesThatStayWithADeviceAreFound() throws Exception {
    Path device = Files.createFile(folder.resolve("ttyUSB0"));
    Path other = Files.createFile(folder.resolve("ttyUSB1"));
    Path byId = Files.createDirectory(folder.resolve("by-id"));
    Path second = Files.createSymbolicLink(byId.resolve("usb-b"), Path.of("../ttyUSB0"));
    Path first = Files.createSymbolicLink(byId.resolve("usb-a"), device);
    Files.createSymbolicLink(byId.resolve("usb-c"), other);
    Files.createSymbolicLink(byId.resolve("usb-d"), folder.resolve("gone"));
    assertThat(SerialPorts.stableNames(device, List.of(folder.resolve("none"), byId)))
        .containsExactly(first, second);

    assertThat(SerialPorts.stableName(device.toString(), List.of(byId)))
        .isEqualTo(first.toString());
    assertThat(SerialPorts.stableName(second.toString(), List.of(byId)))
        .as("one that stays already stays")
        .isEqualTo(second.toString());
    assertThat(SerialPorts.stableName(device.toString(), List.of())).isEqualTo(device.toString());
  }

  @Test
  void aPortThatThisUserMayUseIsNotToldAsForbidden() throws Exception {
    Path device = Files.createFile(folder.resolve("ttyUSB0"));
    assertThat(SerialPorts.notPermitted(device.toString())).isEmpty();
  }

  @Test
  void usbIdsAreWrittenInFourHexadecimalDigitsEach() {
    assertThat(new SerialPortEntry.Usb(0x0403, 0x6001, Optional.empty()).ids())
        .isEqualTo("0403:6001");
  }
}
