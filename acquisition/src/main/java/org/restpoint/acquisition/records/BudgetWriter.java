package org.restpoint.acquisition.records;

import com.fasterxml.jackson.core.JsonProcessingException;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.probe.Scale;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.stability.uncertainty.BudgetLine;
import org.restpoint.stability.uncertainty.BudgetTable;

/** Writes where the uncertainty of each settled result comes from. */
public final class BudgetWriter {

  private static final List<String> COLUMNS =
      List.of(
          "id",
          "source",
          "estimate",
          "standardUncertainty",
          "unit",
          "sensitivity",
          "contribution",
          "sharePercent");

  /** Has no basis that would say more. */
  private static final String PH = new Scale.OfPh().unit();

  private final JournalReader journal;
  private final Writer out;

  /** Writes from an open journal; neither is closed here. */
  public BudgetWriter(JournalReader journal, Writer out) {
    this.journal = journal;
    this.out = out;
  }

  /** Writes the budgets of results: as CSV one row for each source, otherwise a table for each. */
  public void write(ResultQuery query, boolean csv) {
    try {
      if (csv) {
        CsvWriter rows = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(out);
        rows.writeRecord(COLUMNS);
        each(query, result -> rows(rows, result));
        rows.flush();
      } else {
        each(query, this::table);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void each(ResultQuery query, Consumer<Result> use) {
    query.each(
        journal,
        entry -> {
          try {
            Result result = EventJson.mapper().readValue(entry.json(), Result.class);
            if (result.budget().isPresent()) {
              use.accept(result);
            }
          } catch (JsonProcessingException e) {
            throw new IllegalStateException("the journal keeps JSON of our own", e);
          }
        });
  }

  private static void rows(CsvWriter rows, Result result) {
    for (BudgetLine line : result.budget().orElseThrow()) {
      rows.writeRecord(
          result.id(),
          line.source(),
          cell(line.estimate()),
          cell(line.standardUncertainty()),
          line.unit().orElse(""),
          cell(line.sensitivity()),
          String.valueOf(line.contribution()),
          String.valueOf(line.sharePercent()));
    }
  }

  private static String cell(OptionalDouble number) {
    return number.isPresent() ? String.valueOf(number.getAsDouble()) : "";
  }

  private void table(Result result) {
    Result.Amount amount = result.concentration().orElseThrow();
    try {
      out.write(
          new BudgetTable(
                  result.id(),
                  amount.value(),
                  amount.uncertainty() / amount.coverage(),
                  amount.unit().equals(PH) ? PH : amount.unit() + " " + amount.basis(),
                  result.budget().orElseThrow())
              .text());
      out.write('\n');
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
