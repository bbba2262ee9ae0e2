package org.restpoint.acquisition.records;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.FilterWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.RawReading;
import org.restpoint.adapters.journal.EntryQuery;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.SpanQuery;
import org.restpoint.adapters.journal.StoredEntry;
import org.restpoint.adapters.recording.RecordingWriter;

/**
 * Writes what a journal keeps: JSON lines as they were published, CSV by RFC 4180 with a column for
 * each field that people ask for.
 */
public final class RecordWriter {

  private final JournalReader journal;
  private final String station;
  private final Writer out;

  /** Writes from an open journal; neither is closed here. */
  public RecordWriter(JournalReader journal, String station, Writer out) {
    this.journal = journal;
    this.station = station;
    this.out = out;
  }

  /** Writes what was decided of one kind: calibrations, notices, records of samples. */
  public void entries(String kind, SpanQuery span, boolean csv) {
    EntryQuery query = new EntryQuery(Optional.of(kind), span);
    write(kind, consumer -> journal.entries(query, consumer), csv);
  }

  /** Writes results. */
  public void results(ResultQuery query, boolean csv) {
    write("result", consumer -> query.each(journal, consumer), csv);
  }

  private void write(String kind, Consumer<Consumer<StoredEntry>> source, boolean csv) {
    if (!csv) {
      source.accept(entry -> line(entry.json()));
      return;
    }
    List<Column> columns = Column.of(kind);
    CsvWriter rows = rows();
    rows.writeRecord(columns.stream().map(Column::name).toList());
    source.accept(entry -> row(rows, columns, entry.json()));
    flush(rows);
  }

  /** Writes raw readings; as CSV they are a recording. */
  public void readings(SpanQuery span, boolean csv) {
    if (!csv) {
      journal.readings(
          span,
          kept ->
              line(
                  EventJson.write(
                      new RawReading(
                          station,
                          kept.probe(),
                          kept.reading().time(),
                          kept.reading().millivolts(),
                          kept.reading().celsius()))));
      return;
    }
    try (RecordingWriter recording = RecordingWriter.to(keptOpen(out))) {
      journal.readings(span, kept -> recording.write(kept.probe(), kept.reading()));
    }
  }

  /** Writes instructions; as JSON lines they are what a replay takes. */
  public void instructions(SpanQuery span, boolean csv) {
    if (!csv) {
      journal.instructions(span, kept -> line(kept.json()));
      return;
    }
    List<Column> columns = Column.of("instruction");
    CsvWriter rows = rows();
    rows.writeRecord(columns.stream().map(Column::name).toList());
    journal.instructions(span, kept -> row(rows, columns, kept.json()));
    flush(rows);
  }

  private CsvWriter rows() {
    return CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(out);
  }

  /** The table's writer holds rows back; what it still holds goes on. */
  private static void flush(CsvWriter rows) {
    try {
      rows.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A recording is complete when it is closed; what it is written to stays open. */
  private static Writer keptOpen(Writer out) {
    return new FilterWriter(out) {
      @Override
      public void close() throws IOException {
        flush();
      }
    };
  }

  private static void row(CsvWriter rows, List<Column> columns, String json) {
    try {
      JsonNode node = EventJson.mapper().readTree(json);
      rows.writeRecord(columns.stream().map(column -> column.cell(node)).toList());
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the journal keeps JSON of our own", e);
    }
  }

  private void line(String text) {
    try {
      out.write(text);
      out.write('\n');
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
