package org.restpoint.acquisition.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.records.SampleList;
import org.restpoint.acquisition.sample.SampleException;
import org.restpoint.config.station.Station;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "samples",
    description =
        "Gives a running service the records of a whole batch of samples, out of a CSV "
            + "list. The first line has the names of fields, number among them; nothing is sent "
            + "unless every row is right. Prints a line of JSON for each: the record as it is "
            + "kept.")
final class SamplesCommand implements Callable<Integer> {

  /** A record is kept as soon as it was taken. */
  private static final Duration LAST_ANSWER = Duration.ofSeconds(10);

  private static final int MOST_PROBLEMS = 50;

  @Mixin private StationArgument station = new StationArgument();

  @Parameters(index = "1", paramLabel = "PROBE", description = "any electrode of the station")
  private String probe = "";

  @Parameters(index = "2", paramLabel = "LIST", description = "the list (CSV)")
  private Path list = Path.of("");

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws InterruptedException {
    Station read = Correspondence.withProbe(station, probe);
    List<SampleList.Row> rows = rows();
    PrintWriter err = spec.commandLine().getErr();
    int done = 0;
    int sent = 0;
    try (Correspondence open = Correspondence.open(read, station, probe)) {
      try {
        for (SampleList.Row row : rows) {
          sent++;
          if (isKept(open, row)) {
            done++;
          }
        }
      } finally {
        err.println(account(done, sent, rows));
      }
    }
    return done == rows.size() ? ExitStatus.DONE : ExitStatus.BAD_OUTCOME;
  }

  private String account(int done, int sent, List<SampleList.Row> rows) {
    return "restpoint: %d of the %d samples of %s are kept%s"
        .formatted(
            done,
            rows.size(),
            list,
            sent == rows.size()
                ? ""
                : "; it ended at line %d, give the list again: what is kept stays as it is"
                    .formatted(rows.get(sent - 1).line()));
  }

  private boolean isKept(Correspondence open, SampleList.Row row) throws InterruptedException {
    ObjectNode instruction = Correspondence.instruction("sample");
    instruction.set("sample", row.told());
    JsonNode answer = open.ask(instruction);
    if (answer.path("verdict").asText().equals("accepted")) {
      answer = open.answer(instruction, LAST_ANSWER).orElse(answer);
    }
    if (answer.path("verdict").asText().equals("done")) {
      spec.commandLine().getOut().println(EventJson.write(answer.path("outcome")));
      return true;
    }
    for (JsonNode reason : answer.path("reasons")) {
      spec.commandLine()
          .getErr()
          .println(
              "restpoint: line %d was refused: %s. %s"
                  .formatted(
                      row.line(), reason.path("text").asText(), reason.path("remedy").asText()));
    }
    return false;
  }

  private List<SampleList.Row> rows() {
    try {
      return SampleList.read(list, Instant.now());
    } catch (SampleException e) {
      List<String> problems = e.problems();
      StringBuilder text = new StringBuilder();
      text.append(
          "%s is refused and nothing of it is sent, %d %s:"
              .formatted(list, problems.size(), problems.size() == 1 ? "problem" : "problems"));
      problems.stream().limit(MOST_PROBLEMS).forEach(each -> text.append("\n  ").append(each));
      if (problems.size() > MOST_PROBLEMS) {
        text.append("\n  and %d more".formatted(problems.size() - MOST_PROBLEMS));
      }
      throw new CommandException(ExitStatus.NOT_STARTED, text.toString());
    }
  }
}
