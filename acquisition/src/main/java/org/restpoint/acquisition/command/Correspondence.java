package org.restpoint.acquisition.command;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Optional;
import java.util.UUID;
import org.restpoint.acquisition.event.EventJson;
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

/** Instructions to one probe of a running service, and the answers to them. */
final class Correspondence implements AutoCloseable {

  /** A service that is there answers within milliseconds. */
  private static final Duration FIRST_ANSWER = Duration.ofSeconds(10);

  private final Station station;
  private final StationArgument argument;
  private final String instructionTopic;
  private final BrokerAddress address;
  private final Caller caller;

  private Correspondence(
      Station station,
      StationArgument argument,
      String instructionTopic,
      BrokerAddress address,
      Caller caller) {
    this.station = station;
    this.argument = argument;
    this.instructionTopic = instructionTopic;
    this.address = address;
    this.caller = caller;
  }

  /** The station of a command that has a probe of this name, or a word on which it has. */
  static Station withProbe(StationArgument argument, String probe) {
    Station station = argument.read();
    if (!station.probes().containsKey(probe)) {
      throw new CommandException(
          ExitStatus.USAGE,
          "%s is not a probe of station %s: %s"
              .formatted(probe, station.name(), String.join(", ", station.probes().keySet())));
    }
    return station;
  }

  /** Opens it, or says why it cannot be. */
  static Correspondence open(Station station, StationArgument argument, String probe)
      throws InterruptedException {
    BrokerAddress address = broker(station, argument);
    Topics topics = new Topics(station.name());
    Caller caller =
        new Caller(
            address,
            "restpoint-tell-" + UUID.randomUUID(),
            InstantSource.system(),
            System::nanoTime);
    Correspondence opened =
        new Correspondence(station, argument, topics.instruction(probe), address, caller);
    try {
      caller.open(topics.answer(probe));
      return opened;
    } catch (BrokerException e) {
      opened.close();
      throw opened.nobody(e);
    }
  }

  /** An instruction's id and time, which every one gets anew, and room for the rest. */
  static ObjectNode instruction(String word) {
    ObjectNode node = EventJson.mapper().createObjectNode();
    node.put("id", UUID.randomUUID().toString());
    node.put("time", InstantSource.system().instant().toString());
    node.put("do", word);
    return node;
  }

  /** Sends an instruction and waits for the first answer to it. */
  JsonNode ask(ObjectNode instruction) throws InterruptedException {
    try {
      caller.send(instructionTopic, EventJson.write(instruction));
    } catch (BrokerException e) {
      throw nobody(e);
    }
    return answer(instruction, FIRST_ANSWER)
        .orElseThrow(
            () ->
                new CommandException(
                    ExitStatus.NOT_STARTED,
                    "station %s did not answer within %d s; look whether it is running: restpoint run %s"
                        .formatted(station.name(), FIRST_ANSWER.toSeconds(), argument.file())));
  }

  /** The next answer to an instruction; the answers to others are passed over. */
  Optional<JsonNode> answer(ObjectNode instruction, Duration limit) throws InterruptedException {
    String id = instruction.path("id").asText();
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

  private CommandException nobody(BrokerException e) {
    return new CommandException(
        ExitStatus.NOT_STARTED,
        station.broker() instanceof Broker.Embedded
            ? "station %s is not running: nobody answers at %s, where its broker was last; start it with: restpoint run %s"
                .formatted(station.name(), address.url(), argument.file())
            : String.valueOf(e.getMessage()));
  }

  private static BrokerAddress broker(Station station, StationArgument argument) {
    Optional<String> noted = Optional.empty();
    try (JournalReader journal =
        new JournalReader(new JournalSettings(station.journal(), PrivateFolder.path()))) {
      journal.start();
      noted = journal.fact(Service.BROKER_FACT);
    } catch (JournalException e) {
      if (e.kind() != JournalException.Kind.ABSENT) {
        throw e;
      }
    }
    return BrokerAddresses.found(station.broker(), noted)
        .orElseThrow(
            () ->
                new CommandException(
                    ExitStatus.NOT_STARTED,
                    "station %s has not been run yet; start it with: restpoint run %s"
                        .formatted(station.name(), argument.file())));
  }

  @Override
  public void close() {
    caller.close();
  }
}
