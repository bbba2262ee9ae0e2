package org.restpoint.acquisition.workday;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileChannel.MapMode;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.InstantSource;

/** A clock that is set by one process and shows the same to another, in a file that both map. */
final class SetClock implements InstantSource {

  private final MappedByteBuffer shown;

  SetClock(Path file) {
    try (FileChannel channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
      shown = channel.map(MapMode.READ_WRITE, 0, Long.BYTES);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  void set(Instant time) {
    shown.putLong(0, time.toEpochMilli());
  }

  @Override
  public Instant instant() {
    return Instant.ofEpochMilli(shown.getLong(0));
  }
}
