package org.restpoint.acquisition.command;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.service.PrivateFolder;
import org.restpoint.acquisition.slip.ResultLines;
import org.restpoint.acquisition.slip.Slip;
import org.restpoint.acquisition.slip.SlipHtml;
import org.restpoint.acquisition.slip.SlipText;
import org.restpoint.acquisition.slip.Subject;
import org.restpoint.acquisition.station.StationTerms;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.journal.StoredEntry;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.Station;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
    name = "slip",
    description =
        "Prints a result as a slip to hand over: what was measured, the number, how, how "
            + "sure, what it means, and what to take care of. The result is the latest revision "
            + "in the journal, or stands in lines of JSON: tell ... measure --wait | slip "
            + "STATION --from -")
final class SlipCommand implements Callable<Integer> {

  /** What it is printed as. */
  enum As {
    text,
    html
  }

  /** A file larger than this is no list of results. */
  private static final long MOST_BYTES = 256L << 20;

  private static final String STANDARD_INPUT = "-";

  @Mixin private StationArgument station = new StationArgument();

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "RESULT_ID",
      description = "the result's id; with --from it may be left out: the last result there")
  private @Nullable String id;

  @Option(
      names = "--from",
      paramLabel = "FILE",
      description =
          "results or answers as lines of JSON instead of the journal; - for standard input")
  private @Nullable String from;

  @Option(names = "--as", description = "${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE})")
  private As as = As.text;

  @Option(
      names = "--width",
      paramLabel = "N",
      description = "columns of the text, 32 to 100 (default: ${DEFAULT-VALUE})")
  private int width = SlipText.USUAL;

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      description = "times are told by the clock of this zone (default: this machine's)")
  private ZoneId zone = ZoneId.systemDefault();

  @Override
  public Integer call() throws IOException {
    if (width < SlipText.NARROWEST || width > SlipText.WIDEST) {
      throw usage(
          "--width: expected %d to %d columns; found %d"
              .formatted(SlipText.NARROWEST, SlipText.WIDEST, width));
    }
    Station read = station.read();
    Result result = result(read);
    if (!result.station().equals(read.name())) {
      throw usage(
          "the result %s is of station %s, and %s is station %s; name the station file of the result"
              .formatted(result.id(), result.station(), station.file(), read.name()));
    }
    Subject subject =
        new Subject(
            Optional.ofNullable(read.probes().get(result.probe()))
                .flatMap(Probe::electrode)
                .map(StationTerms::analyte),
            zone);
    Slip slip = Slip.of(result, subject);
    Writer out = StandardOutput.buffered();
    out.write(as == As.html ? SlipHtml.of(slip) : SlipText.of(slip, width));
    out.flush();
    return ExitStatus.DONE;
  }

  private Result result(Station read) {
    if (from != null) {
      return ofLines(from);
    }
    if (id == null) {
      throw usage("expected the id of a result, or --from FILE; found neither");
    }
    try (JournalReader journal =
        new JournalReader(new JournalSettings(read.journal(), PrivateFolder.path()))) {
      journal.start();
      return ofEntry(read, id, journal.entry(id));
    }
  }

  private Result ofEntry(Station read, String wanted, Optional<StoredEntry> entry) {
    String kind = entry.map(StoredEntry::kind).orElse("");
    if (!kind.equals("result")) {
      throw usage(
          "%s is %s of station %s; the ids of all results are in: restpoint records %s"
              .formatted(
                  wanted,
                  kind.isEmpty() ? "not the id of a result" : "a " + kind + " and not a result",
                  read.name(),
                  station.file()));
    }
    return ResultLines.read(entry.orElseThrow().json());
  }

  private Result ofLines(String source) {
    String name = source.equals(STANDARD_INPUT) ? "standard input" : source;
    Optional<Result> found;
    try {
      found = ResultLines.last(text(source).lines(), Optional.ofNullable(id));
    } catch (IllegalArgumentException e) {
      throw new CommandException(ExitStatus.NOT_STARTED, "%s: %s".formatted(name, e.getMessage()));
    }
    return found.orElseThrow(
        () ->
            new CommandException(
                ExitStatus.NOT_STARTED,
                "%s holds no result%s; expected lines of JSON, as tell --wait, replay or records --as"
                        .formatted(name, id == null ? "" : " " + id)
                    + " jsonl print them"));
  }

  private static String text(String source) {
    Path file = Path.of(source);
    try {
      if (source.equals(STANDARD_INPUT)) {
        return new String(System.in.readAllBytes(), StandardCharsets.UTF_8);
      }
      if (Files.size(file) > MOST_BYTES) {
        throw new CommandException(
            ExitStatus.NOT_STARTED,
            "%s is larger than %d MiB; give the lines of this result alone"
                .formatted(file, MOST_BYTES >> 20));
      }
      return new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
    } catch (NoSuchFileException e) {
      throw new CommandException(ExitStatus.NOT_STARTED, file + " is not there");
    } catch (IOException e) {
      throw new CommandException(
          ExitStatus.NOT_STARTED, "%s cannot be read: %s".formatted(source, e.getMessage()));
    }
  }

  private static CommandException usage(String text) {
    return new CommandException(ExitStatus.USAGE, text);
  }
}
