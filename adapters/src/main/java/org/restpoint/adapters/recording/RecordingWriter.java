package org.restpoint.adapters.recording;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.List;
import java.util.OptionalDouble;
import org.restpoint.stability.reading.Reading;

/**
 * Writes a recording that {@link RecordingReader} reads back to the last bit: ISO 8601 times with
 * milliseconds, numbers as Java writes them, lines ending in LF. For one thread.
 */
public final class RecordingWriter implements AutoCloseable {

  private static final DateTimeFormatter MILLISECONDS =
      new DateTimeFormatterBuilder().appendInstant(3).toFormatter();

  private final CsvWriter csv;
  private Instant latest = Instant.MIN;

  private RecordingWriter(CsvWriter csv) {
    this.csv = csv;
    csv.writeRecord(RecordingReader.HEADER.split(",", -1));
  }

  /**
   * Begins a recording in a new file.
   *
   * @throws RecordingException if the file is there already or cannot be made
   */
  public static RecordingWriter create(Path file) {
    if (Files.exists(file)) {
      throw new RecordingException(
          "%s is there already and was left as it is; name another file".formatted(file), null);
    }
    try {
      return to(Files.newBufferedWriter(file));
    } catch (IOException e) {
      throw new RecordingException(
          "the recording %s cannot be made (%s)".formatted(file, e.getMessage()), e);
    }
  }

  /** Begins a recording on anything that takes text; closing this closes it. */
  public static RecordingWriter to(Writer text) {
    return new RecordingWriter(CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text));
  }

  /**
   * Writes a reading. Refuses, with an {@link IllegalArgumentException}, one that is earlier than
   * the one before it, and a probe whose name a reader would not give back: an empty one, or one
   * that begins or ends in white space or has a line end in it.
   *
   * @throws RecordingException if it cannot be written
   */
  public void write(String probe, Reading reading) {
    if (reading.time().isBefore(latest)) {
      throw new IllegalArgumentException(
          "the time %s goes back behind %s".formatted(reading.time(), latest));
    }
    if (probe.isEmpty()
        || !probe.equals(probe.strip())
        || !probe.lines().toList().equals(List.of(probe))) {
      throw new IllegalArgumentException("\"%s\" is not the name of a probe".formatted(probe));
    }
    latest = reading.time();
    try {
      csv.writeRecord(
          MILLISECONDS.format(latest), probe, text(reading.millivolts()), text(reading.celsius()));
    } catch (UncheckedIOException e) {
      throw notWritten(e);
    }
  }

  @Override
  public void close() {
    try {
      csv.close();
    } catch (IOException e) {
      throw notWritten(e);
    }
  }

  private static RecordingException notWritten(Exception e) {
    return new RecordingException(
        "the recording cannot be written (%s); is the disk full?".formatted(e.getMessage()), e);
  }

  private static String text(OptionalDouble value) {
    return value.isPresent() ? Double.toString(value.getAsDouble()) : "";
  }
}
