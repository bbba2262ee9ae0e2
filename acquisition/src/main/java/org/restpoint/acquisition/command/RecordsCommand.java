package org.restpoint.acquisition.command;

import java.io.IOException;
import java.io.Writer;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.restpoint.acquisition.records.BudgetWriter;
import org.restpoint.acquisition.records.RecordWriter;
import org.restpoint.acquisition.service.PrivateFolder;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.journal.SpanQuery;
import org.restpoint.config.station.Station;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
    name = "records",
    description = {
      "Prints what the journal keeps, oldest first; also while the service runs.",
      "Readings as csv and instructions as jsonl are what replay takes."
    })
final class RecordsCommand implements Callable<Integer> {

  /** What can be asked for. */
  enum Of {
    results,
    budgets,
    calibrations,
    notices,
    batches,
    readings,
    instructions
  }

  /** How it is written. */
  enum As {
    csv,
    jsonl,
    text
  }

  @Mixin private StationArgument station = new StationArgument();

  @Option(names = "--of", description = "${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE})")
  private Of of = Of.results;

  @Option(
      names = "--as",
      description =
          "${COMPLETION-CANDIDATES} (default: jsonl for instructions, text for budgets, csv for all"
              + " else); text is for budgets alone, which have no jsonl")
  private @Nullable As as;

  @Option(names = "--from", paramLabel = "TIME", description = "the earliest time, ISO 8601 UTC")
  private @Nullable Instant from;

  @Option(names = "--to", paramLabel = "TIME", description = "up to this time, itself excluded")
  private @Nullable Instant to;

  @Option(names = "--probe", paramLabel = "NAME", description = "one probe alone")
  private @Nullable String probe;

  @Override
  public Integer call() throws IOException {
    Station read = station.read();
    SpanQuery span =
        new SpanQuery(
            Optional.ofNullable(probe),
            Optional.ofNullable(from),
            Optional.ofNullable(to),
            OptionalInt.empty());
    As form = Optional.ofNullable(as).orElseGet(this::usual);
    if ((form == As.text) != (of == Of.budgets) && form != As.csv) {
      throw new CommandException(
          ExitStatus.USAGE, "--of %s cannot be written --as %s".formatted(of, form));
    }
    Writer out = StandardOutput.buffered();
    try (JournalReader journal =
        new JournalReader(new JournalSettings(read.journal(), PrivateFolder.path()))) {
      journal.start();
      RecordWriter writer = new RecordWriter(journal, read.name(), out);
      boolean csv = form == As.csv;
      switch (of) {
        case results -> writer.entries("result", span, csv);
        case budgets -> new BudgetWriter(journal, out).write(span, csv);
        case calibrations -> writer.entries("calibration", span, csv);
        case notices -> writer.entries("notice", span, csv);
        case batches -> writer.entries("batch", span, csv);
        case readings -> writer.readings(span, csv);
        case instructions -> writer.instructions(span, csv);
      }
    }
    out.flush();
    return ExitStatus.DONE;
  }

  private As usual() {
    return switch (of) {
      case instructions -> As.jsonl;
      case budgets -> As.text;
      default -> As.csv;
    };
  }
}
