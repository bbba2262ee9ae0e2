package org.restpoint.adapters.serial;

import com.fazecast.jSerialComm.SerialPortTimeoutException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * The native half of jSerialComm, made ready once a process.
 *
 * <p>Left to itself, jSerialComm unpacks its library into the shared temporary folder, in a folder
 * that every user may write to. Here it is unpacked into a private folder beforehand and
 * jSerialComm is told to look there.
 *
 * <p>The native half keeps one list of ports and one last error for the whole process and does not
 * guard them between calls: opening, asking for the error and listing go through {@link #alone}.
 */
final class SerialLibrary {

  private static final String PATH_PROPERTY = "jSerialComm.library.path";

  private static boolean ready;

  /** Where the library of one operating system lies in jSerialComm's jar, and so in the folder. */
  private record Platform(String folder, String file, List<String> architectures) {

    /** The platform under this Java; empty where jSerialComm is left to find its own library. */
    static Optional<Platform> here() {
      String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
      if (system.contains("linux")) {
        return Optional.of(
            new Platform(
                "Linux",
                "libjSerialComm.so",
                List.of(
                    "x86_64",
                    "x86",
                    "armv8_64",
                    "armv8_32",
                    "armv7hf",
                    "armv6hf",
                    "armv5",
                    "ppc64le")));
      }
      if (system.contains("mac")) {
        return Optional.of(
            new Platform("OSX", "libjSerialComm.jnilib", List.of("aarch64", "x86_64", "x86")));
      }
      return Optional.empty();
    }
  }

  private SerialLibrary() {}

  /**
   * Unpacks the native library into {@code folder} and points jSerialComm there. Only the first
   * success in a process does anything: a loaded library stays loaded.
   *
   * @param folder made if absent, for its owner alone (0700)
   * @throws IOException when the folder cannot be made private or written to
   */
  static synchronized void prepare(Path folder) throws IOException {
    if (ready) {
      return;
    }
    Path root = folder.toAbsolutePath();
    Optional<Platform> platform = Platform.here();
    if (platform.isPresent()) {
      makePrivate(root);
      unpack(platform.get(), root);
      System.setProperty(PATH_PROPERTY, root.toString());
    }
    ready = true;
  }

  /** Runs {@code work} while no other thread opens or lists ports. */
  static synchronized <T> T alone(Supplier<T> work) {
    return work.get();
  }

  private static void makePrivate(Path folder) throws IOException {
    Files.createDirectories(folder);
    if (!FileSystems.getDefault().supportedFileAttributeViews().contains("posix")) {
      return;
    }
    Path probe = Files.createTempFile(folder, "owner", null);
    try {
      if (!Files.getOwner(probe).equals(Files.getOwner(folder))) {
        throw new IOException(
            "the folder %s belongs to %s and not to the user of this service"
                .formatted(folder, Files.getOwner(folder).getName()));
      }
    } finally {
      Files.delete(probe);
    }
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
  }

  private static void unpack(Platform platform, Path root) throws IOException {
    for (String architecture : platform.architectures()) {
      String name = platform.folder() + "/" + architecture + "/" + platform.file();
      try (InputStream packed = SerialPortTimeoutException.class.getResourceAsStream("/" + name)) {
        if (packed != null) {
          Path folder = root.resolve(platform.folder()).resolve(architecture);
          replace(Files.createDirectories(folder), platform.file(), packed.readAllBytes());
        }
      }
    }
  }

  /** Moved into place whole, so that a process which has the old file loaded keeps it. */
  private static void replace(Path folder, String name, byte[] content) throws IOException {
    Path file = folder.resolve(name);
    if (Files.isRegularFile(file) && Arrays.equals(Files.readAllBytes(file), content)) {
      return;
    }
    Path fresh = Files.createTempFile(folder, "fresh", null);
    try {
      Files.write(fresh, content);
      Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(fresh);
    }
  }
}
