package org.restpoint.adapters.mqtt;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** How the payload of a message becomes readings. */
public sealed interface MqttReadingFormat {

  /**
   * Reads a payload.
   *
   * @param arrival when it came, to the millisecond
   * @return what it says, at least one, in the order of time
   * @throws RejectedMessageException if it is not a reading
   */
  List<Observation> read(Instant arrival, byte[] payload) throws RejectedMessageException;

  /** The most bytes that a payload may have. */
  default int longestBytes() {
    return 4_096;
  }

  /** The payload is one decimal number in mV, as {@code 187.4} or {@code -1.2e2}. */
  record BareNumber() implements MqttReadingFormat {

    @Override
    public List<Observation> read(Instant arrival, byte[] payload) throws RejectedMessageException {
      return List.of(new Observation(NumberText.read(arrival, payload), false));
    }
  }

  /**
   * The payload is JSON. Refuses, with an {@link IllegalArgumentException}, a pointer that is not
   * one by RFC 6901, and no pointer at all.
   *
   * @param millivolts JSON pointer to the potential in mV; empty for a thermometer
   * @param celsius JSON pointer to the temperature in °C; empty where there is none. Where both are
   *     given, a message without the temperature is a reading without one
   * @param time where its time stands; empty where the time of arrival counts
   */
  record JsonFields(
      Optional<String> millivolts, Optional<String> celsius, Optional<TimeField> time)
      implements MqttReadingFormat {

    public JsonFields {
      if (millivolts.isEmpty() && celsius.isEmpty()) {
        throw new IllegalArgumentException(
            "a message needs a pointer to a potential or a temperature");
      }
      millivolts.ifPresent(JsonFieldPointer::require);
      celsius.ifPresent(JsonFieldPointer::require);
    }

    @Override
    public List<Observation> read(Instant arrival, byte[] payload) throws RejectedMessageException {
      return JsonText.read(arrival, payload, this);
    }
  }

  /**
   * The payload is a SenML pack in JSON (RFC 8428). Potential and temperature of one moment are one
   * reading. Refuses, with an {@link IllegalArgumentException}, no name at all and one name for
   * both.
   *
   * @param millivolts full name of the records with the potential, in mV where they name no unit;
   *     empty for a thermometer
   * @param celsius full name of the records with the temperature, in °C where they name no unit;
   *     empty where there are none
   */
  record SenMlRecords(Optional<String> millivolts, Optional<String> celsius)
      implements MqttReadingFormat {

    public SenMlRecords {
      if (millivolts.isEmpty() && celsius.isEmpty()) {
        throw new IllegalArgumentException("a pack needs a name of a potential or a temperature");
      }
      if (millivolts.equals(celsius)) {
        throw new IllegalArgumentException(
            "expected two names, found one for both: " + celsius.orElse(""));
      }
    }

    /**
     * A node that was out of reach sends what it has gathered at once: a record takes about 40
     * bytes, so this is twenty minutes at one reading a second.
     */
    @Override
    public int longestBytes() {
      return 65_536;
    }

    @Override
    public List<Observation> read(Instant arrival, byte[] payload) throws RejectedMessageException {
      return SenMlReadings.read(arrival, SenMlPack.resolve(payload), this);
    }
  }
}
