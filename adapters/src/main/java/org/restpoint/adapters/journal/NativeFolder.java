package org.restpoint.adapters.journal;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;
import org.restpoint.adapters.journal.JournalException.Kind;
import org.sqlite.SQLiteJDBCLoader;

/**
 * Where the database library is unpacked. The driver's own choice is the shared temporary folder,
 * where another user could swap the file before it is loaded, and where a killed process leaves it
 * behind. Here each process unpacks into a folder of its own below a private one, and removes the
 * folders of processes that no longer run.
 */
final class NativeFolder {

  private static final String PREFIX = "sqlite-";
  private static final String OWNER_ALONE = "rwx------";

  private NativeFolder() {}

  /** Readies the folder and loads the library from it, once in a process. */
  static void prepare(Path folder) {
    try {
      Files.createDirectories(folder);
      keepToOwner(folder);
      removeLeftovers(folder);
      Path own = folder.resolve(PREFIX + ProcessHandle.current().pid());
      Files.createDirectories(own);
      keepToOwner(own);
      System.setProperty("org.sqlite.tmpdir", own.toString());
    } catch (IOException e) {
      throw new JournalException(
          Kind.FOLDER,
          "the folder %s for the database library cannot be made or kept private (%s); let the service's user own it"
              .formatted(folder, e.getMessage()),
          e);
    }
    load(folder);
  }

  @SuppressWarnings("CatchingUnchecked") // The driver declares Exception and throws all kinds.
  private static void load(Path folder) {
    try {
      SQLiteJDBCLoader.initialize();
    } catch (Exception e) {
      throw new JournalException(
          Kind.FAILED,
          "the database library cannot be unpacked into %s or loaded from there (%s); see that the disk has room and lets programs run from there"
              .formatted(folder, e.getMessage()),
          e);
    }
  }

  private static void keepToOwner(Path folder) throws IOException {
    PosixFileAttributeView posix = Files.getFileAttributeView(folder, PosixFileAttributeView.class);
    if (posix != null) {
      posix.setPermissions(PosixFilePermissions.fromString(OWNER_ALONE));
    }
  }

  private static void removeLeftovers(Path folder) throws IOException {
    try (DirectoryStream<Path> folders = Files.newDirectoryStream(folder, PREFIX + "*")) {
      for (Path each : folders) {
        if (!isRunning(each.getFileName().toString().substring(PREFIX.length()))) {
          remove(each);
        }
      }
    }
  }

  private static boolean isRunning(String pid) {
    try {
      return ProcessHandle.of(Long.parseLong(pid)).isPresent();
    } catch (NumberFormatException e) {
      // Not a folder of ours: it is left alone, as if its process were running.
      return true;
    }
  }

  private static void remove(Path folder) {
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      for (Path file : files) {
        Files.deleteIfExists(file);
      }
      Files.deleteIfExists(folder);
    } catch (IOException e) {
      // Another process removes it at this moment, or it belongs to another user. A leftover does
      // no
      // harm, and the next start tries again.
    }
  }
}
