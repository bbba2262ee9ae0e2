package org.restpoint.adapters.serial;

import static org.assertj.core.api.Assertions.assertThat;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.LinkTrouble;

/**
 * Rights, seen by a process of its own: it runs as a user without any where the tests run as root,
 * whom no device refuses.
 */
@EnabledOnOs(OS.LINUX)
@Timeout(120)
class SerialRightsTest {

  @TempDir private Path folder;
  private Path temporary = Path.of("");

  /** The other user must be let in, and needs its own copy of the program. */
  @BeforeEach
  void letTheOtherUserIn() throws Exception {
    mode(folder, "rwxr-xr-x");
    temporary = Files.createDirectory(folder.resolve("temporary"));
    mode(temporary, "rwxrwxrwx");
  }

  @Test
  void aPortThatIsNotPermittedNamesTheGroupThatOwnsIt() throws Exception {
    try (PseudoTerminal meter = new PseudoTerminal()) {
      mode(meter.path(), "---rw----");
      String group =
          Files.readAttributes(meter.path(), PosixFileAttributes.class).group().getName();
      assertThat(openAsOther(meter.path(), temporary.resolve("native")))
          .containsExactly(
              "port-not-permitted",
              "serial port %s is not permitted to this user".formatted(meter.path()),
              "Add the user to the group that owns it (here: %s)".formatted(group));
    }
  }

  @Test
  void theNativeLibraryIsKeptInAFolderForItsUserAlone() throws Exception {
    Path nativeFolder = temporary.resolve("native");
    try (PseudoTerminal meter = new PseudoTerminal()) {
      mode(meter.path(), "rw-rw-rw-");
      assertThat(openAsOther(meter.path(), nativeFolder)).containsExactly("opened");
    }
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(nativeFolder)))
        .isEqualTo("rwx------");
    assertThat(filesUnder(nativeFolder)).contains("Linux/x86_64/libjSerialComm.so");
    assertThat(filesUnder(temporary)).allMatch(file -> file.startsWith("native/"));
  }

  @Test
  void withoutAFolderForTheNativeLibraryThePortIsNotOpened() throws Exception {
    Path notAFolder = Files.createFile(temporary.resolve("file"));
    try (PseudoTerminal meter = new PseudoTerminal()) {
      mode(meter.path(), "rw-rw-rw-");
      assertThat(openAsOther(meter.path(), notAFolder.resolve("native")))
          .hasSize(3)
          .startsWith("serial-library")
          .endsWith("Give the service a folder of its own that only its user can write to");
    }
  }

  private List<String> openAsOther(Path port, Path nativeFolder) throws Exception {
    List<String> command = new ArrayList<>();
    if (Files.getOwner(folder).getName().equals("root")) {
      command.addAll(List.of("setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"));
    }
    command.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Djava.io.tmpdir=" + temporary,
            "-XX:-UsePerfData",
            "-cp",
            classPath(OpenOnce.class, SerialDevice.class, LinkTrouble.class, SerialPort.class),
            OpenOnce.class.getName(),
            port.toString(),
            nativeFolder.toString()));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said.lines().toList();
  }

  /** Copies of where the classes come from, readable by everybody. */
  private String classPath(Class<?>... classes) throws Exception {
    List<String> copies = new ArrayList<>();
    for (Class<?> type : classes) {
      Path source = Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI());
      Path copy = Files.createDirectories(folder.resolve("program")).resolve("" + copies.size());
      copyTree(source, copy);
      copies.add(copy.toString());
    }
    return String.join(":", copies);
  }

  private static void copyTree(Path source, Path target) throws IOException {
    try (Stream<Path> all = Files.walk(source)) {
      for (Path file : all.toList()) {
        Path copy = target.resolve(source.relativize(file).toString());
        if (Files.isDirectory(file)) {
          mode(Files.createDirectories(copy), "rwxr-xr-x");
        } else {
          mode(Files.copy(file, copy, StandardCopyOption.REPLACE_EXISTING), "rw-r--r--");
        }
      }
    }
  }

  private static List<String> filesUnder(Path root) throws IOException {
    try (Stream<Path> all = Files.walk(root)) {
      return all.filter(Files::isRegularFile)
          .map(file -> root.relativize(file).toString())
          .collect(Collectors.toList());
    }
  }

  private static void mode(Path path, String permissions) throws IOException {
    Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(permissions));
  }
}
