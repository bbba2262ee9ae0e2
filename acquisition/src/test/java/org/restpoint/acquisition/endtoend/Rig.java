package org.restpoint.acquisition.endtoend;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URI;
import java.util.function.Predicate;
import org.restpoint.adapters.mqtt.Subscriber;
import org.restpoint.adapters.mqtt.Subscriber.Heard;

/**
 * A rig at the broker: it sends the readings of a probe and its instructions, and hears what the
 * service says of that station.
 */
final class Rig implements AutoCloseable {

  private final Subscriber client;
  private final String station;

  private Rig(Subscriber client, String station) {
    this.client = client;
    this.station = station;
  }

  /** Connects and hears all that the service says from now on, and what the broker has kept. */
  static Rig connect(URI broker, String station) {
    Rig rig = new Rig(Subscriber.connect(broker, "rig"), station);
    rig.client.subscribe("restpoint/" + station + "/#", 1);
    return rig;
  }

  /**
   * Waits until the service says that it is there, and from then on hears what it is told, or until
   * it or the broker says that it is gone.
   */
  Rig awaitOnline(boolean there) {
    client.next(
        message ->
            message.topic().equals("restpoint/" + station + "/online")
                && message.payload().equals(Boolean.toString(there)));
    return this;
  }

  /** Sends a message as a device does, at QoS 0. */
  void send(String topic, String payload) {
    client.publish(topic, payload, 0, false);
  }

  /** Gives an instruction at QoS 1. */
  void tell(String probe, String instruction) {
    client.publish(topic(probe, "instruction"), instruction, 1, false);
  }

  /** Gives an instruction and has the broker keep it, which is a mistake. */
  void tellRetained(String probe, String instruction) {
    client.publish(topic(probe, "instruction"), instruction, 1, true);
  }

  /** Waits for an answer to an instruction. */
  JsonNode answer(String probe, String id, String verdict) {
    return next(
        probe,
        "answer",
        answer ->
            answer.path("id").asText().equals(id)
                && answer.get("verdict").asText().equals(verdict));
  }

  /** Waits for a message about a probe that fits; others are passed over. */
  JsonNode next(String probe, String what, Predicate<JsonNode> wanted) {
    Heard heard =
        client.next(
            message ->
                message.topic().equals(topic(probe, what))
                    && wanted.test(Ran.parse(message.payload())));
    return Ran.parse(heard.payload());
  }

  /** Reads a standard: tells it, waits until it is taken, sends readings, waits for the outcome. */
  JsonNode calibrate(String probe, String topic, String standard, String reading) {
    tell(probe, "{\"id\":\"%1$s\",\"do\":\"calibrate\",\"standard\":\"%1$s\"}".formatted(standard));
    answer(probe, standard, "accepted");
    for (int i = 0; i < 5; i++) {
      send(topic, reading);
    }
    return answer(probe, standard, "done").get("outcome");
  }

  private String topic(String probe, String what) {
    return "restpoint/%s/%s/%s".formatted(station, probe, what);
  }

  @Override
  public void close() {
    client.close();
  }
}
