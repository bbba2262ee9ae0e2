package org.restpoint.acquisition.workday;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Predicate;
import org.restpoint.adapters.mqtt.Subscriber;

/**
 * The day at a broker: sends what the meter sends and what is told, and hears what the service
 * says. It sets the clock before each, and goes on when the service has taken it: it says readings
 * again ({@code raw: true}) and answers what is told.
 */
final class LiveDay implements AutoCloseable {

  private static final String SAID = "restpoint/" + Workday.STATION + "/";
  private static final String TOPIC = "bench/" + Workday.PROBE;

  private final Path folder;
  private final Path station;
  private final Subscriber client;
  private final Heard heard = new Heard();
  private final SetClock clock;
  private DayProcess service;
  private int instructions;

  LiveDay(Path folder, Path station, URI broker) {
    this.folder = folder;
    this.station = station;
    this.client = Subscriber.connect(broker, "bench").subscribe(SAID + "#", 1);
    this.clock = new SetClock(folder.resolve(DayProcess.CLOCK));
    clock.set(Workday.START);
    this.service = start();
  }

  /** Starts the service; what it says before it is there would be lost. */
  private DayProcess start() {
    DayProcess started = DayProcess.start(folder, station);
    await("online", JsonNode::asBoolean);
    return started;
  }

  /** Goes through the day. */
  Heard go(List<Moment> moments) {
    moments.forEach(this::happen);
    service.end();
    await("online", said -> !said.asBoolean());
    return heard;
  }

  private void happen(Moment moment) {
    clock.set(moment.time());
    if (moment instanceof Moment.Read read) {
      String time = read.time().toString();
      client.publish(TOPIC, read.message(), 0, false);
      await(Workday.PROBE + "/raw", raw -> raw.path("time").asText().equals(time));
    } else if (moment instanceof Moment.Told told) {
      String id = "day-" + instructions++;
      client.publish(SAID + Workday.PROBE + "/instruction", told.message(id), 1, false);
      await(Workday.PROBE + "/answer", answer -> answer.path("id").asText().equals(id));
    } else if (moment instanceof Moment.PowerCut) {
      service.kill();
      await("online", said -> !said.asBoolean());
    } else {
      service = start();
    }
  }

  /** Waits for a message, and takes what is said before it. */
  private void await(String topic, Predicate<JsonNode> wanted) {
    client.next(
        message -> {
          JsonNode said = Heard.parse(message.payload());
          heard.take(said);
          return message.topic().equals(SAID + topic) && wanted.test(said);
        });
  }

  @Override
  public void close() {
    service.close();
    client.close();
  }
}
