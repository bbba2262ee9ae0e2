package org.restpoint.acquisition.command;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.InstructionException;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.acquisition.service.BrokerAddresses;
import org.restpoint.acquisition.service.PrivateFolder;
import org.restpoint.acquisition.service.Service;
import org.restpoint.acquisition.service.Topics;
import org.restpoint.adapters.journal.JournalException;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.mqtt.BrokerAddress;
import org.restpoint.adapters.mqtt.BrokerException;
import org.restpoint.adapters.mqtt.Caller;
import org.restpoint.config.station.Broker;
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
      "Instructions: soak [minutes=20], calibrate standard=NAME, measure [sample=NUMBER],",
      "verify standard=NAME, rinsed, replaced [part=membrane|electrode], cancel.",
      "In a batch: next [skip=true], in-place [cup=NAME], done; its list is given by: batch."
    })
final class TellCommand implements Callable<Integer> {

  /** A service that is there answers within milliseconds. */
  private static final Duration FIRST_ANSWER = Duration.ofSeconds(10);

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
    Station read = station.read();
    if (!read.probes().containsKey(probe)) {
      throw new CommandException(
          ExitStatus.USAGE,
          "%s is not a probe of station %s: %s"
              .formatted(probe, read.name(), String.join(", ", read.probes().keySet())));
    }
    String id = UUID.randomUUID().toString();
    String message = message(id);
    Topics topics = new Topics(read.name());
    BrokerAddress address = broker(read);
    InstantSource clock = InstantSource.system();
    try (Caller caller = new Caller(address, "restpoint-tell-" + id, clock, System::nanoTime)) {
      caller.open(topics.answer(probe));
      caller.send(topics.instruction(probe), message);
      return hear(caller, id, read.name());
    } catch (BrokerException e) {
      throw new CommandException(
          ExitStatus.NOT_STARTED,
          read.broker() instanceof Broker.Embedded
              ? "station %s is not running: nobody answers at %s, where its broker was last; start it with: restpoint run %s"
                  .formatted(read.name(), address.url(), station.file())
              : String.valueOf(e.getMessage()));
    }
  }

  private String message(String id) {
    ObjectNode node = EventJson.mapper().createObjectNode();
    node.put("id", id);
    node.put("time", InstantSource.system().instant().toString());
    node.put("do", instruction);
    fields.forEach(
        (key, value) -> {
          if (key.equals("minutes") && value.matches("\\d{1,9}")) {
            node.put(key, Integer.parseInt(value));
          } else if (key.equals("skip") && value.matches("true|false")) {
            node.put(key, Boolean.parseBoolean(value));
          } else {
            node.put(key, value);
          }
        });
    String message = EventJson.write(node);
    try {
      InstructionReader.read(message);
    } catch (InstructionException e) {
      throw new CommandException(ExitStatus.USAGE, String.valueOf(e.getMessage()));
    }
    return message;
  }

  private BrokerAddress broker(Station read) {
    Optional<String> noted = Optional.empty();
    try (JournalReader journal =
        new JournalReader(new JournalSettings(read.journal(), PrivateFolder.path()))) {
      journal.start();
      noted = journal.fact(Service.BROKER_FACT);
    } catch (JournalException e) {
      if (e.kind() != JournalException.Kind.ABSENT) {
        throw e;
      }
    }
    return BrokerAddresses.found(read.broker(), noted)
        .orElseThrow(
            () ->
                new CommandException(
                    ExitStatus.NOT_STARTED,
                    "station %s has not been run yet; start it with: restpoint run %s"
                        .formatted(read.name(), station.file())));
  }

  private int hear(Caller caller, String id, String name) throws InterruptedException {
    JsonNode first =
        answer(caller, id, FIRST_ANSWER)
            .orElseThrow(
                () ->
                    new CommandException(
                        ExitStatus.NOT_STARTED,
                        "station %s did not answer within %d s; look whether it is running: restpoint run %s"
                            .formatted(name, FIRST_ANSWER.toSeconds(), station.file())));
    print(first);
    if (verdict(first).equals("refused")) {
      explain("was refused", first.path("reasons"));
      return ExitStatus.BAD_OUTCOME;
    }
    if (!wait) {
      return ExitStatus.DONE;
    }
    JsonNode last =
        answer(caller, id, Duration.ofSeconds(withinSeconds))
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

  /** The next answer with this id; the answers to others are passed over. */
  private static Optional<JsonNode> answer(Caller caller, String id, Duration limit)
      throws InterruptedException {
    long deadline = System.nanoTime() + limit.toNanos();
    while (true) {
      Optional<String> heard = caller.next(Duration.ofNanos(deadline - System.nanoTime()));
      if (heard.isEmpty()) {
        return Optional.empty();
      }
      try {
        JsonNode answer = EventJson.mapper().readTree(heard.get());
        if (answer.path("id").asText().equals(id)) {
          return Optional.of(answer);
        }
      } catch (JsonProcessingException e) {
        // Somebody else wrote on the topic; an answer of the service is JSON.
      }
    }
  }
}
