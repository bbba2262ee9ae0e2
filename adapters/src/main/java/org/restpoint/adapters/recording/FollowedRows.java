package org.restpoint.adapters.recording;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The rows of a growing file from its beginning on, in any pieces. A quoted value ends with its
 * line at the latest.
 */
final class FollowedRows implements RowFraming.Lines {

  /** Takes what comes of the rows. */
  interface Taker {

    /** A row is a reading. */
    void reading(ProbeReading row);

    /** A line is none. */
    void skipped(SkippedLine line);
  }

  private final RecordingLayout asked;
  private final @Nullable NearClock near;
  private final Taker taker;
  private final LetterDecoder decoder;
  private final RowFraming framing = new RowFraming();
  private RecordingLayout layout;
  private CsvReader.CsvReaderBuilder parser;
  private RecordingRows rows;
  private boolean bound;
  private boolean passing;
  private boolean first = true;
  private String misfit = "";

  /**
   * @param near what times are held against; null where they are not read
   * @param passing whether the rows that come first are passed over
   */
  FollowedRows(RecordingLayout layout, @Nullable NearClock near, boolean passing, Taker taker) {
    this.asked = layout;
    this.near = near;
    this.passing = passing;
    this.taker = taker;
    this.decoder = new LetterDecoder(layout.text().encoding());
    this.layout = layout;
    this.parser = RecordingText.parser(layout.text());
    this.rows = new RecordingRows(layout, near);
    this.bound = !layout.header();
  }

  /** Takes the next bytes. */
  void accept(ByteBuffer bytes) {
    framing.accept(decoder.letters(bytes), this);
  }

  /** The rows from here on count. */
  void passNoMore() {
    passing = false;
  }

  /** What is wrong with the header; empty where nothing is. */
  Optional<String> misfit() {
    return misfit.isEmpty() ? Optional.empty() : Optional.of(misfit);
  }

  /** The row that has begun and will not end, if there is one. */
  Optional<SkippedLine> half() {
    return framing.isBegun() && !passing && misfit.isEmpty()
        ? Optional.of(
            new SkippedLine(framing.number(), Skip.ENDLESS, "the file ends in the middle of a row"))
        : Optional.empty();
  }

  @Override
  public void line(String text, long number) {
    if (text.isBlank() || !misfit.isEmpty()) {
      return;
    }
    if (first) {
      first = false;
      if (RecordingText.isNative(text)) {
        useNative();
      }
    }
    if (!bound || !passing) {
      parse(text, number);
    }
  }

  @Override
  public void tooLong(long number) {
    if (!passing && misfit.isEmpty()) {
      taker.skipped(
          new SkippedLine(
              number,
              Skip.ENDLESS,
              "the row is longer than %d characters".formatted(RecordingText.LONGEST_ROW)));
    }
  }

  private void useNative() {
    RecordingLayout own = RecordingLayout.NATIVE;
    layout = asked.columns().time().isEmpty() ? own.withoutTime() : own;
    parser = RecordingText.parser(layout.text());
    rows = new RecordingRows(layout, near);
    bound = false;
  }

  private void parse(String text, long number) {
    rows.startAt(number);
    try (CloseableIterator<Row> parsed = parser.build(rows, text).iterator()) {
      while (parsed.hasNext()) {
        take(parsed.next());
      }
    } catch (IOException e) {
      throw new UncheckedIOException("a text in memory has failed", e);
    }
  }

  private void take(Row row) {
    if (row instanceof HeaderRow header) {
      bind(header);
    } else if (row instanceof ProbeReading reading) {
      taker.reading(reading);
    } else if (row instanceof SkippedLine line && (bound || line.skip() == Skip.COMMENT)) {
      taker.skipped(line);
    }
  }

  private void bind(HeaderRow header) {
    Optional<String> found = HeaderAdvice.misfit(layout, header.values());
    if (found.isPresent()) {
      misfit = "line %d: %s".formatted(header.line(), found.get());
    } else {
      rows.bind(BoundColumns.headed(layout.columns(), header.values()));
      bound = true;
    }
  }
}
