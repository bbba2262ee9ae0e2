package org.restpoint.adapters.recording;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.text.Excerpt;

/**
 * Reads a recording row by row: CSV in UTF-8 (a byte order mark is accepted) with the header {@code
 * time,probe,millivolts,celsius}; lines end in LF or CRLF; spaces around a value and empty lines
 * are passed over.
 *
 * <p>Times are ISO 8601 in UTC, or seconds from a zero, one of the two in the whole file; they are
 * rounded to the nearest millisecond, a half to the even one. Rows come in time order; equal times
 * are in order. A row that is not a reading, or whose time goes back, is told to a consumer by its
 * line, counted, and passed over. {@link #hasNext()} and {@link #next()} throw a {@link
 * RecordingException} when the file cannot be read on. For one thread.
 */
public final class RecordingReader implements Iterator<ProbeReading>, AutoCloseable {

  /** The first line of every recording. */
  public static final String HEADER = "time,probe,millivolts,celsius";

  /** More than any row needs; a missing quotation mark must not read a whole file into memory. */
  private static final int LONGEST_ROW = 65_536;

  private final Path file;
  private final RecordingRows rows;
  private final CloseableIterator<Row> iterator;
  private final Consumer<RowProblem> problems;
  private @Nullable ProbeReading ahead;
  private long accepted;
  private long rejected;

  private RecordingReader(
      Path file,
      RecordingRows rows,
      CloseableIterator<Row> iterator,
      Consumer<RowProblem> problems) {
    this.file = file;
    this.rows = rows;
    this.iterator = iterator;
    this.problems = problems;
  }

  /** Opens a recording; seconds are counted from 1970-01-01T00:00:00Z. */
  public static RecordingReader open(Path file, Consumer<RowProblem> problems) {
    return open(file, Instant.EPOCH, problems);
  }

  /**
   * Opens a recording and checks its header.
   *
   * @param zero where seconds are counted from, a whole millisecond
   * @param problems told of each row that is not a reading, in the order of the file
   * @throws RecordingException if the file is absent, cannot be read or has another header
   */
  public static RecordingReader open(Path file, Instant zero, Consumer<RowProblem> problems) {
    if (Files.isDirectory(file)) {
      throw new RecordingException(
          "%s is a folder; name a recording, a CSV file".formatted(file), null);
    }
    RecordingRows rows = new RecordingRows(zero);
    RecordingReader reader = new RecordingReader(file, rows, parse(file, rows), problems);
    try {
      reader.checkHeader();
      return reader;
    } catch (RecordingException e) {
      reader.close();
      throw e;
    }
  }

  private static CloseableIterator<Row> parse(Path file, RecordingRows rows) {
    try {
      return CsvReader.builder()
          .detectBomHeader(true)
          .skipEmptyLines(true)
          .allowExtraFields(true)
          .allowMissingFields(true)
          .allowExtraCharsAfterClosingQuote(true)
          .maxBufferSize(LONGEST_ROW)
          .build(rows, file)
          .iterator();
    } catch (NoSuchFileException e) {
      throw new RecordingException("there is no recording %s".formatted(file), e);
    } catch (IOException e) {
      throw new RecordingException(
          "the recording %s cannot be opened (%s)".formatted(file, e.getMessage()), e);
    }
  }

  private void checkHeader() {
    Row first = pull();
    if (first == null) {
      throw new RecordingException(
          "%s line 1: expected the header %s, found the end of the file".formatted(file, HEADER),
          null);
    }
    if (!(first instanceof HeaderRow header) || !header.text().equals(HEADER)) {
      String found = first instanceof HeaderRow header ? header.text() : "";
      throw new RecordingException(
          "%s line %d: expected the header %s, found %s"
              .formatted(file, rows.line(), HEADER, Excerpt.of(found)),
          null);
    }
  }

  @Override
  public boolean hasNext() {
    while (ahead == null) {
      Row row = pull();
      if (row instanceof ProbeReading reading) {
        accepted++;
        ahead = reading;
      } else if (row instanceof RowProblem problem) {
        rejected++;
        problems.accept(problem);
      } else {
        return false;
      }
    }
    return true;
  }

  @Override
  public ProbeReading next() {
    if (!hasNext() || ahead == null) {
      throw new NoSuchElementException("the recording %s has ended".formatted(file));
    }
    ProbeReading next = ahead;
    ahead = null;
    return next;
  }

  /** What was read so far. */
  public RecordingCounts counts() {
    return new RecordingCounts(accepted, rejected);
  }

  @Override
  public void close() {
    try {
      iterator.close();
    } catch (IOException e) {
      throw new RecordingException(
          "the recording %s cannot be closed (%s)".formatted(file, e.getMessage()), e);
    }
  }

  private @Nullable Row pull() {
    try {
      return iterator.hasNext() ? iterator.next() : null;
    } catch (CsvParseException e) {
      throw new RecordingException(
          "%s line %d: the row is longer than %d characters; is a closing quotation mark missing there?"
              .formatted(file, rows.line(), LONGEST_ROW),
          e);
    } catch (UncheckedIOException e) {
      throw new RecordingException(
          "%s line %d: the row cannot be read (%s)".formatted(file, rows.line(), e.getMessage()),
          e);
    }
  }
}
