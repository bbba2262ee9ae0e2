package org.restpoint.acquisition.command;

import java.nio.file.Path;
import java.util.List;
import org.restpoint.acquisition.station.StationTerms;
import org.restpoint.config.file.Problem;
import org.restpoint.config.file.StationFile;
import org.restpoint.config.station.Station;
import picocli.CommandLine.Parameters;

/** The station file that a command is given. */
final class StationArgument {

  @Parameters(index = "0", paramLabel = "STATION", description = "the station file (YAML)")
  private Path file = Path.of("");

  Path file() {
    return file;
  }

  /** Reads it, or says all that is wrong with it. */
  Station read() {
    return read(file);
  }

  static Station read(Path file) {
    StationFile.Outcome outcome = StationFile.read(file, StationTerms.vocabulary());
    if (outcome instanceof StationFile.Outcome.Understood understood) {
      return understood.station();
    }
    List<Problem> problems = ((StationFile.Outcome.Refused) outcome).problems();
    StringBuilder text = new StringBuilder();
    text.append(
        "%s is refused, %d %s:"
            .formatted(file, problems.size(), problems.size() == 1 ? "problem" : "problems"));
    problems.forEach(problem -> text.append("\n  ").append(problem.text()));
    throw new CommandException(ExitStatus.STATION_REFUSED, text.toString());
  }
}
