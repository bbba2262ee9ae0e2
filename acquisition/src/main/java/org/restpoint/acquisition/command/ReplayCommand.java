package org.restpoint.acquisition.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.InstructionException;
import org.restpoint.acquisition.replay.InstructionFile;
import org.restpoint.acquisition.replay.Replay;
import org.restpoint.acquisition.replay.TimedInstruction;
import org.restpoint.adapters.recording.RecordingException;
import org.restpoint.config.station.Station;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "replay",
    description =
        "Runs a recording through the station as fast as it goes and prints what comes of "
            + "it. One JSON object a line, in the order of time. Opens no link, no broker and "
            + "no journal.")
final class ReplayCommand implements Callable<Integer> {

  @Mixin private StationArgument station = new StationArgument();

  @Parameters(
      index = "1",
      paramLabel = "RECORDING",
      description =
          "the recording: CSV with the header time,probe,millivolts,celsius, or the file of links"
              + " of this station, read as they say")
  private Path recording = Path.of("");

  @Option(
      names = "--instructions",
      paramLabel = "FILE",
      description = "instructions to carry out, a JSON object a line with time and probe")
  private @Nullable Path instructions;

  @Option(
      names = "--layout",
      paramLabel = "PROBE",
      description = "read it as the link of this probe reads its recording")
  private @Nullable String layout;

  @Option(names = "--raw", description = "print each reading too")
  private boolean raw;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws IOException {
    Station read = station.read();
    PrintWriter err = spec.commandLine().getErr();
    Writer out = StandardOutput.buffered();
    try {
      Replay replay =
          new Replay(read, raw, event -> print(out, EventJson.write(event)), err::println);
      Replay.Counts counts =
          layout == null
              ? replay.run(recording, instructions())
              : replay.run(recording, known(layout, Replay.layouts(read)), instructions());
      if (counts.unused() > 0) {
        err.println(
            "%d rows of %s were read, %d were not"
                .formatted(counts.used(), recording, counts.unused()));
      }
      out.flush();
      return ExitStatus.DONE;
    } catch (RecordingException | InstructionException e) {
      throw new CommandException(ExitStatus.NOT_STARTED, String.valueOf(e.getMessage()));
    }
  }

  private static String known(String probe, Set<String> layouts) {
    if (!layouts.contains(probe)) {
      throw new CommandException(
          ExitStatus.USAGE,
          "--layout: expected a probe whose link is a recording (%s); found %s"
              .formatted(layouts.isEmpty() ? "there is none" : String.join(", ", layouts), probe));
    }
    return probe;
  }

  private List<TimedInstruction> instructions() {
    return Optional.ofNullable(instructions).map(InstructionFile::read).orElse(List.of());
  }

  private static void print(Writer out, String line) {
    try {
      out.write(line);
      out.write('\n');
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
