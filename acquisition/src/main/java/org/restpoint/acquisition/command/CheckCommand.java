package org.restpoint.acquisition.command;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.restpoint.config.station.Station;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

@Command(
    name = "check",
    description =
        "Reads the station file, tells every problem and what it understood. Opens nothing.")
final class CheckCommand implements Callable<Integer> {

  @Mixin private StationArgument station = new StationArgument();

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    Station read = station.read();
    PrintWriter out = spec.commandLine().getOut();
    StationAccount.of(read).forEach(out::println);
    out.flush();
    return ExitStatus.DONE;
  }
}
