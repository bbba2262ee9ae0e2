package org.restpoint.adapters.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.journal.JournalException.Kind;

/**
 * The right to write a journal: an advisory lock on {@code <journal>.lock}, which the system frees
 * when the process ends, however it ends. The file holds the process's number and stays behind.
 */
final class JournalLock implements AutoCloseable {

  /**
   * Journals this process writes. Asked first, since closing a second channel on the lock file
   * would let go of the first one's lock: POSIX locks belong to a process, not to a channel.
   */
  private static final Set<Path> HELD_HERE = ConcurrentHashMap.newKeySet();

  /** Far behind the text, so that the text can be read where locks are mandatory. */
  private static final long LOCKED_BYTE = 1L << 30;

  private final Path lockFile;
  private final FileChannel channel;

  private JournalLock(Path lockFile, FileChannel channel) {
    this.lockFile = lockFile;
    this.channel = channel;
  }

  /** Takes the lock, or refuses with a {@link JournalException} that says who has it. */
  static JournalLock take(Path journal) {
    Path lockFile = lockFileOf(journal);
    if (!HELD_HERE.add(lockFile)) {
      throw held(journal, "this service");
    }
    @Nullable FileChannel channel = null;
    boolean taken = false;
    try {
      channel =
          FileChannel.open(
              lockFile,
              StandardOpenOption.CREATE,
              StandardOpenOption.READ,
              StandardOpenOption.WRITE);
      FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
      if (lock == null) {
        throw held(journal, "another running service (process " + writerIn(channel) + ")");
      }
      ByteBuffer pid =
          StandardCharsets.US_ASCII.encode(Long.toString(ProcessHandle.current().pid()));
      channel.truncate(0);
      channel.write(pid, 0);
      taken = true;
      return new JournalLock(lockFile, channel);
    } catch (IOException e) {
      throw new JournalException(
          Kind.FOLDER,
          "the journal %s cannot be written (%s: %s); let the service's user write the folder"
              .formatted(journal, e.getClass().getSimpleName(), e.getMessage()),
          e);
    } finally {
      if (!taken) {
        HELD_HERE.remove(lockFile);
        closeQuietly(channel);
      }
    }
  }

  private static Path lockFileOf(Path journal) {
    Path folder = journal.getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new JournalException(
          Kind.FOLDER,
          "the journal %s cannot be made: there is no folder %s; make it, or name another file"
              .formatted(journal, folder));
    }
    try {
      return folder.toRealPath().resolve(journal.getFileName() + ".lock");
    } catch (IOException e) {
      throw new JournalException(Kind.FOLDER, "the folder %s cannot be read".formatted(folder), e);
    }
  }

  private static JournalException held(Path journal, String holder) {
    return new JournalException(
        Kind.HELD,
        "%s already writes the journal %s; stop it, or give this station a journal of its own"
            .formatted(holder, journal));
  }

  private static String writerIn(FileChannel channel) throws IOException {
    ByteBuffer text = ByteBuffer.allocate(20);
    channel.read(text, 0);
    String pid = StandardCharsets.US_ASCII.decode(text.flip()).toString();
    return pid.isEmpty() ? "unknown" : pid;
  }

  @Override
  public void close() {
    closeQuietly(channel);
    HELD_HERE.remove(lockFile);
  }

  private static void closeQuietly(@Nullable FileChannel channel) {
    if (channel != null) {
      try {
        channel.close();
      } catch (IOException e) {
        // The descriptor is given back either way, and the lock with it.
      }
    }
  }
}
