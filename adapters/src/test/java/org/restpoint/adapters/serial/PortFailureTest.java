package org.restpoint.adapters.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.adapters.link.LinkTrouble;

class PortFailureTest {

  private static final String PORT = "/dev/ttyUSB0";

  @TempDir private Path folder;

  @Test
  void absentSaysWhereToLook() {
    assertThat(PortFailure.of(2, folder.resolve("none"))).isEqualTo(new PortFailure.Absent());
    assertThat(PortFailure.of(13, folder.resolve("none"))).isEqualTo(new PortFailure.Absent());
    assertThat(PortFailure.of(6, folder)).isEqualTo(new PortFailure.Absent());
    assertThat(PortFailure.of(19, folder)).isEqualTo(new PortFailure.Absent());
    assertThat(new PortFailure.Absent().trouble(PORT))
        .isEqualTo(
            new LinkTrouble(
                "port-absent",
                "serial port /dev/ttyUSB0 is absent",
                "Plug the meter in, or look which ports there are with: restpoint ports"));
  }

  @ParameterizedTest
  @ValueSource(ints = {11, 16, 35})
  void heldByAnotherProgramSaysHowToFindIt(int errorCode) {
    assertThat(PortFailure.of(errorCode, folder)).isEqualTo(new PortFailure.Busy(false));
    assertThat(new PortFailure.Busy(false).trouble(PORT))
        .isEqualTo(
            new LinkTrouble(
                "port-busy",
                "serial port /dev/ttyUSB0 is busy: another program holds it",
                "Close the other program; which one it is tells: fuser -v /dev/ttyUSB0"));
  }

  @Test
  void heldByThisServiceSaysSo() {
    assertThat(PortFailure.of(2, folder)).isEqualTo(new PortFailure.Busy(true));
    assertThat(new PortFailure.Busy(true).trouble(PORT))
        .isEqualTo(
            new LinkTrouble(
                "port-busy",
                "serial port /dev/ttyUSB0 is busy: another probe of this service holds it",
                "Name the port alike for all probes on it, or give each a port of its own"));
  }

  @Test
  void notPermittedNamesTheGroupThatWouldDo() throws Exception {
    Path device = Files.createFile(folder.resolve("device"));
    PosixFileAttributes attributes = Files.readAttributes(device, PosixFileAttributes.class);
    String owner = attributes.owner().getName();
    String group = attributes.group().getName();

    Files.setPosixFilePermissions(device, PosixFilePermissions.fromString("rw-rw----"));
    assertThat(PortFailure.of(13, device))
        .isEqualTo(new PortFailure.NotPermitted(owner, group, true));
    Files.setPosixFilePermissions(device, PosixFilePermissions.fromString("rw--w----"));
    assertThat(PortFailure.of(13, device))
        .isEqualTo(new PortFailure.NotPermitted(owner, group, false));

    assertThat(new PortFailure.NotPermitted("root", "dialout", true).trouble(PORT))
        .isEqualTo(
            new LinkTrouble(
                "port-not-permitted",
                "serial port /dev/ttyUSB0 is not permitted to this user",
                "Add the user to the group that owns it (here: dialout)"));
    assertThat(new PortFailure.NotPermitted("root", "tty", false).trouble(PORT).remedy())
        .isEqualTo(
            "Only its owner may use it (here: root): let its group read and write too,"
                + " and add the user to that group (here: tty)");
  }

  @Test
  void whatIsNoSerialPortIsCalledSo() {
    assertThat(PortFailure.of(25, folder).trouble("/etc/hosts").text())
        .isEqualTo("/etc/hosts is not a serial port");
    assertThat(PortFailure.of(5, folder).trouble(PORT).text())
        .isEqualTo("serial port /dev/ttyUSB0 cannot be used: the system answers with error 5");
  }
}
