package org.restpoint.adapters.mqtt;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.adapters.mqtt.MqttReadingFormat.JsonFields;
import org.restpoint.stability.reading.Reading;

/** A payload of which JSON pointers say what is where. */
final class JsonText {

  private JsonText() {}

  static List<Observation> read(Instant arrival, byte[] payload, JsonFields fields)
      throws RejectedMessageException {
    JsonNode tree = StrictJson.parse(payload);
    OptionalDouble millivolts = number(tree, fields.millivolts());
    OptionalDouble celsius = number(tree, fields.celsius());
    if (fields.millivolts().isPresent() && millivolts.isEmpty()) {
      throw new RejectedMessageException("there is nothing at " + fields.millivolts().get());
    }
    if (millivolts.isEmpty() && celsius.isEmpty()) {
      throw new RejectedMessageException("there is nothing at " + fields.celsius().orElse(""));
    }
    Instant time = fields.time().isPresent() ? fields.time().get().in(tree) : arrival;
    try {
      Reading reading = new Reading(time, millivolts, celsius);
      return List.of(new Observation(reading, fields.time().isPresent()));
    } catch (IllegalArgumentException e) {
      throw new RejectedMessageException(String.valueOf(e.getMessage()));
    }
  }

  /** Nothing, and an explicit null, are an absent value; anything else must be a number. */
  private static OptionalDouble number(JsonNode tree, Optional<String> pointer)
      throws RejectedMessageException {
    if (pointer.isEmpty()) {
      return OptionalDouble.empty();
    }
    JsonNode found = tree.at(JsonPointer.compile(pointer.get()));
    if (found.isMissingNode() || found.isNull()) {
      return OptionalDouble.empty();
    }
    if (!found.isNumber()) {
      throw new RejectedMessageException(
          "expected a number at %s, found %s".formatted(pointer.get(), StrictJson.kind(found)));
    }
    return OptionalDouble.of(found.doubleValue());
  }
}
