package org.restpoint.acquisition.replay;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.recording.ProbeReading;
import org.restpoint.adapters.recording.RecordingReader;
import org.restpoint.adapters.recording.SkipReport;

/**
 * The rows of all parts of a recording in one order of time; at one time those of earlier parts.
 */
final class RecordingRows implements AutoCloseable {

  /** More are not read; they are counted. */
  private static final int ROWS_TOLD = 20;

  private final List<OpenPart> parts = new ArrayList<>();
  private final Path recording;
  private final Consumer<String> complaints;

  private RecordingRows(Path recording, Consumer<String> complaints) {
    this.recording = recording;
    this.complaints = complaints;
  }

  /** Opens a recording; one in the native form is read once. */
  static RecordingRows open(
      Path recording, List<RecordingPart> parts, Consumer<String> complaints) {
    RecordingRows rows = new RecordingRows(recording, complaints);
    try {
      for (RecordingPart part : parts) {
        OpenPart open = rows.new OpenPart(part);
        rows.parts.add(open);
        if (open.reader.isNative()) {
          break;
        }
      }
      return rows;
    } catch (RuntimeException e) {
      rows.close();
      throw e;
    }
  }

  /** The next row; empty at the end. */
  Optional<ProbeReading> next() {
    OpenPart first = null;
    for (OpenPart part : parts) {
      ProbeReading row = part.ahead();
      if (row != null && (first == null || row.reading().time().isBefore(first.time()))) {
        first = part;
      }
    }
    return first == null ? Optional.empty() : first.taken();
  }

  /** Tells what was passed over and not told one by one. */
  void conclude() {
    for (OpenPart part : parts) {
      part.skips
          .summary()
          .ifPresent(
              all ->
                  complaints.accept(
                      "of %s%s were passed over: %s".formatted(recording, part.label, all)));
    }
  }

  /** How many rows were readings. */
  long accepted() {
    return parts.stream().mapToLong(part -> part.reader.counts().accepted()).sum();
  }

  /** How many were not. */
  long rejected() {
    return parts.stream().mapToLong(part -> part.reader.counts().rejected()).sum();
  }

  @Override
  public void close() {
    parts.forEach(part -> part.reader.close());
  }

  /** A part that is being read. */
  private final class OpenPart {

    private final RecordingPart part;
    private final String label;
    private final SkipReport skips;
    private final RecordingReader reader;
    private @Nullable ProbeReading ahead;

    OpenPart(RecordingPart part) {
      this.part = part;
      this.label = part.label();
      this.skips =
          new SkipReport(
              ROWS_TOLD,
              line ->
                  complaints.accept(
                      "%s%s line %d: %s".formatted(recording, label, line.line(), line.reason())));
      this.reader = RecordingReader.open(recording, part.layout(), skips);
    }

    @Nullable ProbeReading ahead() {
      while (ahead == null && reader.hasNext()) {
        ahead = part.take(reader.next()).orElse(null);
      }
      return ahead;
    }

    Instant time() {
      return ahead == null ? Instant.MAX : ahead.reading().time();
    }

    Optional<ProbeReading> taken() {
      Optional<ProbeReading> row = Optional.ofNullable(ahead);
      ahead = null;
      return row;
    }
  }
}
