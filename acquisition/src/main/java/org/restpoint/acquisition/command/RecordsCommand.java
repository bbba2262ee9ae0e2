package org.restpoint.acquisition.command;

import java.io.IOException;
import java.io.Writer;
import java.time.Instant;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.restpoint.acquisition.records.BudgetWriter;
import org.restpoint.acquisition.records.GeoJsonWriter;
import org.restpoint.acquisition.records.RecordWriter;
import org.restpoint.acquisition.records.ResultQuery;
import org.restpoint.acquisition.records.SenMlWriter;
import org.restpoint.acquisition.records.SummaryWriter;
import org.restpoint.acquisition.service.PrivateFolder;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.journal.SpanQuery;
import org.restpoint.config.station.Station;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
    name = "records",
    description = {
      "Prints what the journal keeps, oldest first; also while the service runs.",
      "Readings as csv and instructions as jsonl are what replay takes."
    })
final class RecordsCommand implements Callable<Integer> {

  /** What can be asked for. */
  enum Of {
    results(As.csv, As.jsonl, As.senml, As.geojson),
    budgets(As.text, As.csv),
    summary(As.text, As.csv),
    calibrations(As.csv, As.jsonl),
    notices(As.csv, As.jsonl),
    samples(As.csv, As.jsonl),
    batches(As.csv, As.jsonl),
    readings(As.csv, As.jsonl),
    instructions(As.jsonl, As.csv);

    private final As usual;
    private final String forms;

    Of(As usual, As... others) {
      this.usual = usual;
      this.forms = EnumSet.of(usual, others).toString();
    }

    private boolean canBe(As form) {
      return forms.matches(".*\\b%s\\b.*".formatted(form));
    }

    private boolean isOfResults() {
      return this == results || this == budgets;
    }
  }

  /** How it is written. */
  enum As {
    csv,
    jsonl,
    senml,
    geojson,
    text
  }

  @Mixin private StationArgument station = new StationArgument();

  @Option(names = "--of", description = "${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE})")
  private Of of = Of.results;

  @Option(
      names = "--as",
      description =
          "${COMPLETION-CANDIDATES} (default: jsonl for instructions, text for budgets and summary,"
              + " csv for all else); text is for budgets and summary alone, which have no jsonl;"
              + " senml and geojson are for results")
  private @Nullable As as;

  @Option(names = "--from", paramLabel = "TIME", description = "the earliest time, ISO 8601 UTC")
  private @Nullable Instant from;

  @Option(names = "--to", paramLabel = "TIME", description = "up to this time, itself excluded")
  private @Nullable Instant to;

  @Option(names = "--probe", paramLabel = "NAME", description = "one probe alone")
  private @Nullable String probe;

  @Option(
      names = "--sample",
      paramLabel = "NUMBER",
      description = "results or budgets of one sample alone")
  private @Nullable String sample;

  @Option(
      names = "--latest",
      description =
          "of each result the latest revision alone; senml, geojson and summary are always so")
  private boolean latest;

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      description = "by whose clock the days of a summary begin (default: this machine's)")
  private ZoneId zone = ZoneId.systemDefault();

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws IOException {
    Station read = station.read();
    As form = form();
    SpanQuery span =
        new SpanQuery(
            Optional.ofNullable(probe),
            Optional.ofNullable(from),
            Optional.ofNullable(to),
            OptionalInt.empty());
    Writer out = StandardOutput.buffered();
    try (JournalReader journal =
        new JournalReader(new JournalSettings(read.journal(), PrivateFolder.path()))) {
      journal.start();
      write(journal, read.name(), span, form, out);
    }
    out.flush();
    return ExitStatus.DONE;
  }

  private As form() {
    As form = Optional.ofNullable(as).orElse(of.usual);
    if (!of.canBe(form)) {
      throw new CommandException(
          ExitStatus.USAGE, "--of %s cannot be written --as %s".formatted(of, form));
    }
    if ((sample != null || latest) && !of.isOfResults()) {
      throw new CommandException(
          ExitStatus.USAGE,
          "--sample and --latest are for results and budgets; found --of %s".formatted(of));
    }
    return form;
  }

  private void write(JournalReader journal, String name, SpanQuery span, As form, Writer out) {
    RecordWriter writer = new RecordWriter(journal, name, out);
    boolean csv = form == As.csv;
    switch (of) {
      case results -> results(journal, writer, span, form, out);
      case budgets -> new BudgetWriter(journal, out).write(query(span), csv);
      case summary -> new SummaryWriter(journal, out).write(span, zone, csv);
      case calibrations -> writer.entries("calibration", span, csv);
      case notices -> writer.entries("notice", span, csv);
      case samples -> writer.entries("sample", span, csv);
      case batches -> writer.entries("batch", span, csv);
      case readings -> writer.readings(span, csv);
      case instructions -> writer.instructions(span, csv);
    }
  }

  private void results(
      JournalReader journal, RecordWriter writer, SpanQuery span, As form, Writer out) {
    switch (form) {
      case senml -> {
        long leftOut = new SenMlWriter(journal, out).write(query(span));
        if (leftOut > 0) {
          spec.commandLine()
              .getErr()
              .printf("%d left out: without a number, or from before 1978-07-04%n", leftOut);
        }
      }
      case geojson -> new GeoJsonWriter(journal, out).write(query(span));
      default -> writer.results(query(span), form == As.csv);
    }
  }

  private ResultQuery query(SpanQuery span) {
    return new ResultQuery(span, Optional.ofNullable(sample), latest);
  }
}
