package org.restpoint.acquisition.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.Callable;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.InstructionException;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.acquisition.records.CupTable;
import org.restpoint.config.station.Station;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "batch",
    description =
        "Gives a running service a list of cups, out of a CSV file, and prints its "
            + "answer. Columns: cup and one of standard, sample, check, blank, duplicate, "
            + "spike, rinse in each row; recipe where a recipe is meant. Then, for each cup: "
            + "tell ... next, tell ... in-place; at the end: tell ... done.")
final class BatchCommand implements Callable<Integer> {

  /** A list is taken or not as soon as it is read. */
  private static final Duration LAST_ANSWER = Duration.ofSeconds(10);

  @Mixin private StationArgument station = new StationArgument();

  @Parameters(index = "1", paramLabel = "PROBE", description = "the probe's name")
  private String probe = "";

  @Parameters(index = "2", paramLabel = "LIST", description = "the list of cups (CSV)")
  private Path list = Path.of("");

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws InterruptedException {
    Station read = Correspondence.withProbe(station, probe);
    ObjectNode message = message();
    try (Correspondence open = Correspondence.open(read, station, probe)) {
      JsonNode answer = open.ask(message);
      if (answer.path("verdict").asText().equals("accepted")) {
        answer = open.answer(message, LAST_ANSWER).orElse(answer);
      }
      spec.commandLine().getOut().println(EventJson.write(answer));
      spec.commandLine().getOut().flush();
      for (JsonNode reason : answer.path("reasons")) {
        spec.commandLine()
            .getErr()
            .println(
                "restpoint: the batch was refused: %s. %s"
                    .formatted(reason.path("text").asText(), reason.path("remedy").asText()));
      }
      return answer.path("verdict").asText().equals("done")
          ? ExitStatus.DONE
          : ExitStatus.BAD_OUTCOME;
    }
  }

  private ObjectNode message() {
    try {
      ObjectNode message = Correspondence.instruction("batch");
      message.set("cups", CupTable.read(list));
      InstructionReader.read(EventJson.write(message));
      return message;
    } catch (InstructionException e) {
      throw new CommandException(
          ExitStatus.NOT_STARTED,
          "%s is refused and nothing of it is sent:\n  %s"
              .formatted(list, String.valueOf(e.getMessage()).replace("\n", "\n  ")));
    }
  }
}
