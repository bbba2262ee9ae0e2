package org.restpoint.adapters.mqtt;

import com.fasterxml.jackson.core.JsonPointer;
import java.time.Instant;
import java.util.Optional;
import org.restpoint.stability.reading.Reading;

/** How the payload of a message becomes a reading. */
public sealed interface MqttReadingFormat {

  /**
   * Reads a payload.
   *
   * @param time when it came, to the millisecond
   * @throws RejectedMessageException if it is not a reading
   */
  Reading read(Instant time, byte[] payload) throws RejectedMessageException;

  /** The payload is one decimal number in mV, as {@code 187.4} or {@code -1.2e2}. */
  record BareNumber() implements MqttReadingFormat {

    @Override
    public Reading read(Instant time, byte[] payload) throws RejectedMessageException {
      return NumberText.read(time, payload);
    }
  }

  /**
   * The payload is JSON. Refuses, with an {@link IllegalArgumentException}, a pointer that is not
   * one by RFC 6901, and no pointer at all.
   *
   * @param millivolts JSON pointer to the potential in mV; empty for a thermometer
   * @param celsius JSON pointer to the temperature in °C; empty where there is none. Where both are
   *     given, a message without the temperature is a reading without one
   */
  record JsonFields(Optional<String> millivolts, Optional<String> celsius)
      implements MqttReadingFormat {

    public JsonFields {
      if (millivolts.isEmpty() && celsius.isEmpty()) {
        throw new IllegalArgumentException(
            "a message needs a pointer to a potential or a temperature");
      }
      millivolts.ifPresent(JsonFields::requirePointer);
      celsius.ifPresent(JsonFields::requirePointer);
    }

    private static void requirePointer(String pointer) {
      try {
        JsonPointer.compile(pointer);
      } catch (IllegalArgumentException e) {
        throw new IllegalArgumentException(
            "expected a JSON pointer such as /mv or /data/0/mv, found " + pointer, e);
      }
    }

    @Override
    public Reading read(Instant time, byte[] payload) throws RejectedMessageException {
      return JsonText.read(time, payload, this);
    }
  }
}
