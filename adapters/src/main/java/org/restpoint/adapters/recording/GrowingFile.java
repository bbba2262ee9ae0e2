package org.restpoint.adapters.recording;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Reads what is appended to a file, and notices when it is another one. What was read stays read: a
 * file that comes back, or one put in its place, is read on where it holds the same bytes up to
 * there, and from its beginning where it does not. Never waits for more. For one thread.
 */
final class GrowingFile implements Closeable {

  /** What a look found. */
  enum Found {
    /** Nothing new. */
    NOTHING,
    /** Bytes, in {@link #bytes()}. */
    BYTES,
    /** The file is there; it is read from its beginning. */
    BEGUN,
    /** The file is there again and is read on. */
    CONTINUED,
    /** Another file stands there; it is read from its beginning. */
    REPLACED,
    /** The file was cut or written anew; it is read from its beginning. */
    REWRITTEN,
    /** There is no file. */
    ABSENT,
    /** It cannot be read; {@link #trouble()} says why. */
    UNREADABLE
  }

  /** Enough to tell the rows of one time from those of any other. */
  private static final int KNOWN_BYTES = 256;

  private static final int MOST_AT_ONCE = 65_536;

  private final Path path;
  private final ByteBuffer buffer = ByteBuffer.allocate(MOST_AT_ONCE);
  private @Nullable FileChannel channel;
  private @Nullable Object identity;
  private long position;
  private byte[] known = new byte[0];
  private String trouble = "";

  GrowingFile(Path path) {
    this.path = path;
  }

  /** Looks once. */
  Found look() {
    try {
      return channel == null ? open() : read(channel);
    } catch (NoSuchFileException e) {
      close();
      return Found.ABSENT;
    } catch (IOException e) {
      close();
      trouble = "%s cannot be read (%s)".formatted(path, e.getMessage());
      return Found.UNREADABLE;
    }
  }

  /** The bytes found last, from the buffer's position to its limit; good until the next look. */
  ByteBuffer bytes() {
    return buffer;
  }

  /** Why it could not be read. */
  String trouble() {
    return trouble;
  }

  @Override
  public void close() {
    FileChannel open = channel;
    channel = null;
    if (open != null) {
      try {
        open.close();
      } catch (IOException e) {
        // Nothing was written to it, so nothing is lost.
        trouble = "%s could not be closed (%s)".formatted(path, e.getMessage());
      }
    }
  }

  private Found open() throws IOException {
    BasicFileAttributes before = Files.readAttributes(path, BasicFileAttributes.class);
    if (!before.isRegularFile()) {
      trouble = "%s is not a file; name a recording, a CSV file".formatted(path);
      return Found.UNREADABLE;
    }
    FileChannel opened = FileChannel.open(path, StandardOpenOption.READ);
    channel = opened;
    identity = identity(before);
    if (!identity(Files.readAttributes(path, BasicFileAttributes.class)).equals(identity)) {
      close();
      return Found.NOTHING;
    }
    if (position == 0) {
      return Found.BEGUN;
    }
    return holdsWhatWasRead(opened) ? Found.CONTINUED : restart(Found.REPLACED);
  }

  private Found read(FileChannel open) throws IOException {
    if (!holdsWhatWasRead(open)) {
      return restart(Found.REWRITTEN);
    }
    buffer.clear();
    int count = open.read(buffer, position);
    buffer.flip();
    if (count > 0) {
      position += count;
      remember(count);
      return Found.BYTES;
    }
    Object now = identity(Files.readAttributes(path, BasicFileAttributes.class));
    if (now.equals(identity)) {
      return Found.NOTHING;
    }
    close();
    return open();
  }

  private Found restart(Found why) {
    position = 0;
    known = new byte[0];
    return why;
  }

  private void remember(int count) {
    byte[] joined = Arrays.copyOf(known, known.length + Math.min(count, KNOWN_BYTES));
    int taken = joined.length - known.length;
    buffer.get(count - taken, joined, known.length, taken);
    known = Arrays.copyOfRange(joined, Math.max(0, joined.length - KNOWN_BYTES), joined.length);
  }

  private boolean holdsWhatWasRead(FileChannel open) throws IOException {
    if (open.size() < position) {
      return false;
    }
    ByteBuffer there = ByteBuffer.allocate(known.length);
    long at = position - known.length;
    while (there.hasRemaining()) {
      int count = open.read(there, at + there.position());
      if (count < 0) {
        return false;
      }
    }
    return Arrays.equals(there.array(), known);
  }

  /** What tells one file from another of the same name; some systems know only when it was made. */
  private static Object identity(BasicFileAttributes attributes) {
    Object key = attributes.fileKey();
    return key == null ? attributes.creationTime() : key;
  }
}
