package org.restpoint.adapters.recording;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Reads a recording row by row, in the order of time. Lines end in LF or CRLF; spaces around a
 * value and empty lines are passed over; the header standing there again is no row.
 *
 * <p>In the native form (CSV in UTF-8 with the header {@code time,probe,millivolts,celsius}) times
 * are ISO 8601 in UTC, or seconds from a zero, one of the two in the whole file; rows come in the
 * order of time; equal times are in order. In another {@link RecordingLayout} the rows of each
 * probe do, and rows of different probes may stand up to 10 s in the wrong order: they are put
 * right. Times are rounded to the nearest millisecond, a half to the even one.
 *
 * <p>A row that is not a reading, or whose time goes back, is told to a consumer by its line,
 * counted, and passed over. {@link #hasNext()} and {@link #next()} throw a {@link
 * RecordingException} when the file cannot be read on. For one thread.
 */
public final class RecordingReader implements Iterator<ProbeReading>, AutoCloseable {

  /** The first line of a recording in the native form. */
  public static final String HEADER = String.join(",", RecordingLayout.NATIVE_HEADER);

  private final Path file;
  private final RecordingRows rows;
  private final CloseableIterator<Row> iterator;
  private final Consumer<SkippedLine> skipped;
  private final @Nullable InTimeOrder order;
  private final boolean nativeForm;
  private @Nullable ProbeReading ahead;
  private long accepted;
  private long rejected;

  private RecordingReader(Path file, RecordingText.Opened opened, Consumer<SkippedLine> skipped) {
    RecordingLayout layout = opened.layout();
    this.file = file;
    this.rows = new RecordingRows(layout, null);
    this.iterator = RecordingText.parser(layout.text()).build(rows, opened.text()).iterator();
    this.skipped = skipped;
    this.nativeForm = layout.isNative();
    this.order = layout.isNative() || !layout.hasProbes() ? null : new InTimeOrder();
  }

  /** Opens a recording in the native form; seconds are counted from 1970-01-01T00:00:00Z. */
  public static RecordingReader open(Path file, Consumer<SkippedLine> skipped) {
    return open(file, RecordingLayout.NATIVE, skipped);
  }

  /**
   * Opens a recording and reads its header; seconds from zero are counted from
   * 1970-01-01T00:00:00Z. Refuses, with an {@link IllegalArgumentException}, a layout without
   * times.
   *
   * @param layout how it is written, unless its header is the native one
   * @param skipped told of each line that gives no reading, in the order of the file
   * @throws RecordingException if the file is absent, cannot be read or has another header
   */
  public static RecordingReader open(
      Path file, RecordingLayout layout, Consumer<SkippedLine> skipped) {
    if (layout.columns().time().isEmpty()) {
      throw new IllegalArgumentException("a recording without times gives no readings");
    }
    if (Files.isDirectory(file)) {
      throw new RecordingException(
          "%s is a folder; name a recording, a CSV file".formatted(file), null);
    }
    RecordingText.Opened opened = text(file, layout);
    RecordingReader reader = new RecordingReader(file, opened, skipped);
    try {
      if (opened.layout().header()) {
        reader.readHeader(opened.layout());
      }
      return reader;
    } catch (RecordingException e) {
      reader.close();
      throw e;
    }
  }

  private static RecordingText.Opened text(Path file, RecordingLayout layout) {
    try {
      return RecordingText.open(file, layout);
    } catch (NoSuchFileException e) {
      throw new RecordingException("there is no recording %s".formatted(file), e);
    } catch (IOException e) {
      throw new RecordingException(
          "the recording %s cannot be opened (%s)".formatted(file, e.getMessage()), e);
    }
  }

  private void readHeader(RecordingLayout layout) {
    Row first = pull();
    while (first instanceof SkippedLine comment) {
      skipped.accept(comment);
      first = pull();
    }
    if (!(first instanceof HeaderRow header)) {
      throw new RecordingException(
          "%s line 1: expected %s, found the end of the file"
              .formatted(file, HeaderAdvice.expected(layout)),
          null);
    }
    Optional<String> misfit = HeaderAdvice.misfit(layout, header.values());
    if (misfit.isPresent()) {
      throw new RecordingException(
          "%s line %d: %s".formatted(file, header.line(), misfit.get()), null);
    }
    rows.bind(BoundColumns.headed(layout.columns(), header.values()));
  }

  @Override
  public boolean hasNext() {
    while (ahead == null) {
      Row row = pull();
      if (row instanceof ProbeReading reading) {
        take(reading);
      } else if (row instanceof SkippedLine line) {
        skip(line);
      } else {
        ahead = order == null ? null : order.last();
        return ahead != null;
      }
    }
    return true;
  }

  private void take(ProbeReading reading) {
    if (order == null) {
      ahead = reading;
    } else if (order.offer(reading)) {
      ahead = order.next();
    } else {
      skip(
          new SkippedLine(
              rows.line(),
              Skip.TIME_BACK,
              "the time %s goes back more than %d s behind rows of other probes before it"
                  .formatted(reading.reading().time(), InTimeOrder.SPAN_MILLIS / 1_000)));
      return;
    }
    accepted++;
  }

  private void skip(SkippedLine line) {
    rejected += line.skip().isRejected() ? 1 : 0;
    skipped.accept(line);
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

  /** Whether the file is in the native form, whatever layout was given. */
  public boolean isNative() {
    return nativeForm;
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
              .formatted(file, rows.line(), RecordingText.LONGEST_ROW),
          e);
    } catch (UncheckedIOException e) {
      throw new RecordingException(
          "%s line %d: the row cannot be read (%s)".formatted(file, rows.line(), e.getMessage()),
          e);
    }
  }
}
