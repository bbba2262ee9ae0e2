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
    Wanted wanted = fields.wanted();
    OptionalDouble potential = number(tree, wanted.potential());
    OptionalDouble temperature = number(tree, wanted.temperature());
    if (wanted.potential().isPresent() && potential.isEmpty()) {
      throw new RejectedMessageException("there is nothing at " + wanted.potential().get());
    }
    if (potential.isEmpty() && temperature.isEmpty()) {
      throw new RejectedMessageException("there is nothing at " + wanted.temperature().orElse(""));
    }
    Instant time = fields.time().isPresent() ? fields.time().get().in(tree) : arrival;
    Reading reading = Believed.reading(wanted.meaning().parsed(potential, temperature), time);
    return List.of(new Observation(reading, fields.time().isPresent()));
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
