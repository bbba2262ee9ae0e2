package org.restpoint.acquisition.records;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.restpoint.acquisition.records.SampleFates.Best;
import org.restpoint.acquisition.records.SampleFates.Fate;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.SpanQuery;

/** Writes what was done in a span of time: for a person, or as CSV with a row for each figure. */
public final class SummaryWriter {

  private static final String WITHOUT = "samples without a result";
  private static final String FLAGGED = "samples with flagged results alone";
  private static final List<String> OUTCOMES =
      List.of("settled", "passed", "flagged", "unsettled", "refused");

  private final JournalReader journal;
  private final Writer out;

  /** Writes from an open journal; neither is closed here. */
  public SummaryWriter(JournalReader journal, Writer out) {
    this.journal = journal;
    this.out = out;
  }

  /** Writes it; a day begins at midnight of the zone. */
  public void write(SpanQuery span, ZoneId zone, boolean csv) {
    Summary summary = Summary.of(journal, span, zone);
    try {
      if (csv) {
        table(summary);
      } else {
        text(summary);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void text(Summary summary) throws IOException {
    if (summary.days().isEmpty()) {
      out.write("no results and no standards\n");
    }
    for (Map.Entry<Day, DayTally> day : summary.days().entrySet()) {
      out.write("%s  %s\n".formatted(day.getKey().date(), day.getKey().probe()));
      tally(day.getValue());
      out.write("\n");
    }
    fates(WITHOUT, summary.samples().of(Best.NONE));
    fates(FLAGGED, summary.samples().of(Best.FLAGGED));
  }

  private void tally(DayTally tally) throws IOException {
    line(
        "results",
        "%d settled (%d passed, %d flagged), %d unsettled, %d refused"
            .formatted(OUTCOMES.stream().map(tally::results).toArray()));
    line("flags", counts(tally.flags()));
    line(
        "standards",
        "%d accepted, %d refused"
            .formatted(tally.standards("accepted"), tally.standards("refused")));
    line("checks", counts(tally.checks()));
    for (Map.Entry<DayTally.Kind, List<Told>> of : tally.numbers().entrySet()) {
      DayTally.Kind kind = of.getKey();
      List<Told> told = of.getValue();
      line(
          kind.name(),
          "%d in %s %s: lowest %s, median %s, highest %s"
              .formatted(
                  told.size(),
                  kind.unit(),
                  kind.basis(),
                  told.get(0).briefly(),
                  Told.median(told).briefly(),
                  told.get(told.size() - 1).briefly()));
    }
  }

  private static String counts(Map<String, Integer> counts) {
    return counts.isEmpty()
        ? "none"
        : counts.entrySet().stream()
            .map(count -> count.getValue() + " " + count.getKey())
            .collect(Collectors.joining(", "));
  }

  private void fates(String heading, List<Fate> fates) throws IOException {
    out.write("%s: %s\n".formatted(heading, fates.isEmpty() ? "none" : fates.size()));
    for (Fate fate : fates) {
      line(fate.number(), "%s %s: %s".formatted(fate.day().date(), fate.day().probe(), fate.why()));
    }
  }

  private void line(String name, String text) throws IOException {
    out.write("  %-10s %s\n".formatted(name, text));
  }

  private void table(Summary summary) throws IOException {
    CsvWriter rows = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(out);
    rows.writeRecord("day", "probe", "what", "of", "value", "unit", "basis");
    summary.days().forEach((day, tally) -> rows(rows, day, tally));
    summary.samples().of(Best.NONE).forEach(fate -> row(rows, fate.day(), WITHOUT, fate));
    summary.samples().of(Best.FLAGGED).forEach(fate -> row(rows, fate.day(), FLAGGED, fate));
    rows.flush();
  }

  private static void rows(CsvWriter rows, Day day, DayTally tally) {
    OUTCOMES.forEach(of -> row(rows, day, "results", of, tally.results(of)));
    tally.flags().forEach((flag, count) -> row(rows, day, "flags", flag, count));
    List.of("accepted", "refused")
        .forEach(of -> row(rows, day, "standards", of, tally.standards(of)));
    tally.checks().forEach((of, count) -> row(rows, day, "checks", of, count));
    tally
        .numbers()
        .forEach(
            (kind, told) -> {
              row(rows, day, "numbers", kind.name(), told.size());
              row(rows, day, "lowest", kind, told.get(0));
              row(rows, day, "median", kind, Told.median(told));
              row(rows, day, "highest", kind, told.get(told.size() - 1));
            });
  }

  private static void row(CsvWriter rows, Day day, String what, String of, int count) {
    rows.writeRecord(day.date().toString(), day.probe(), what, of, String.valueOf(count), "", "");
  }

  private static void row(CsvWriter rows, Day day, String what, DayTally.Kind kind, Told told) {
    rows.writeRecord(
        day.date().toString(),
        day.probe(),
        what,
        kind.name(),
        told.exactly(),
        kind.unit(),
        kind.basis());
  }

  private static void row(CsvWriter rows, Day day, String what, Fate fate) {
    rows.writeRecord(day.date().toString(), day.probe(), what, fate.number(), fate.why(), "", "");
  }
}
