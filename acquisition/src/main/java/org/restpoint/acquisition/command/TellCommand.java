package org.restpoint.acquisition.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.InstructionException;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.acquisition.sample.SampleException;
import org.restpoint.config.station.Station;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "tell",
    description = {
      "Gives a running service an instruction and prints its answer as a line of JSON.",
      "Instructions:",
      "  soak [minutes=N], rinsed [into=STANDARD], store [days=N],",
      "  calibrate standard=NAME, accept-standard [because=TEXT],",
      "  measure [sample=NUMBER] [recipe=NAME] [private=true] [FIELD=TEXT ...],",
      "  verify [standard=NAME], verify role=blank,",
      "  verify role=duplicate|spike sample=NUMBER,",
      "  sample number=NUMBER FIELD=TEXT ..., forget sample=NUMBER,",
      "  replaced [part=membrane|electrode], cancel;",
      "  in a batch, whose list the command batch gives:",
      "  next [skip=true], in-place [cup=NAME], done.",
      "A FIELD is one of the sample's record, like grower=NAME or kind=soil."
    })
final class TellCommand implements Callable<Integer> {

  @Mixin private StationArgument station = new StationArgument();

  @Parameters(index = "1", paramLabel = "PROBE", description = "the probe's name")
  private String probe = "";

  @Parameters(index = "2", paramLabel = "INSTRUCTION", description = "what to do")
  private String instruction = "";

  @Parameters(index = "3..*", paramLabel = "key=value", description = "what the instruction needs")
  private Map<String, String> fields = new LinkedHashMap<>();

  @Option(names = "--wait", description = "wait until it is done and print the outcome too")
  private boolean wait;

  @Option(
      names = "--within",
      paramLabel = "SECONDS",
      description = "with --wait: how long at most (default: ${DEFAULT-VALUE})")
  private int withinSeconds = 3600;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws InterruptedException {
    Station read = Correspondence.withProbe(station, probe);
    ObjectNode message = message();
    try (Correspondence open = Correspondence.open(read, station, probe)) {
      return hear(open, message);
    }
  }

  private ObjectNode message() {
    try {
      ObjectNode message = TellFields.put(Correspondence.instruction(instruction), fields);
      InstructionReader.read(EventJson.write(message));
      return message;
    } catch (InstructionException | SampleException e) {
      throw new CommandException(ExitStatus.USAGE, String.valueOf(e.getMessage()));
    }
  }

  private int hear(Correspondence open, ObjectNode message) throws InterruptedException {
    JsonNode first = open.ask(message);
    print(first);
    if (verdict(first).equals("refused")) {
      explain("was refused", first.path("reasons"));
      return ExitStatus.BAD_OUTCOME;
    }
    if (!wait) {
      return ExitStatus.DONE;
    }
    JsonNode last =
        open.answer(message, Duration.ofSeconds(withinSeconds))
            .orElseThrow(
                () ->
                    new CommandException(
                        ExitStatus.BAD_OUTCOME,
                        "%s was not done within %d s".formatted(instruction, withinSeconds)));
    print(last);
    if (isGood(last)) {
      return ExitStatus.DONE;
    }
    if (verdict(last).equals("refused")) {
      explain("was given up", last.path("reasons"));
    } else {
      explain("gave nothing that can be used", last.at("/outcome/reasons"));
    }
    return ExitStatus.BAD_OUTCOME;
  }

  /** The reasons that stand in an answer, for the person at the terminal. */
  private void explain(String what, JsonNode reasons) {
    for (JsonNode reason : reasons) {
      String remedy = reason.path("remedy").asText();
      spec.commandLine()
          .getErr()
          .println(
              "restpoint: %s %s: %s.%s"
                  .formatted(
                      instruction,
                      what,
                      reason.path("text").asText(),
                      remedy.isEmpty() ? "" : " " + remedy));
    }
  }

  private static boolean isGood(JsonNode answer) {
    JsonNode outcome = answer.path("outcome");
    List<String> good = List.of("settled", "accepted", "");
    return verdict(answer).equals("done")
        && good.contains(outcome.path("outcome").asText(outcome.path("verdict").asText("")));
  }

  private static String verdict(JsonNode answer) {
    return answer.path("verdict").asText();
  }

  private void print(JsonNode answer) {
    spec.commandLine().getOut().println(EventJson.write(answer));
    spec.commandLine().getOut().flush();
  }
}
