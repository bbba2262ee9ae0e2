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
   * one by RFC 6901. A message without the temperature is a reading without one, unless there is no
   * potential either.
   *
   * @param wanted the numbers, and the JSON pointers to them
   * @param time where its time stands; empty where the time of arrival counts
   */
  record JsonFields(Wanted wanted, Optional<TimeField> time) implements MqttReadingFormat {

    public JsonFields {
      wanted.potential().ifPresent(JsonFieldPointer::require);
      wanted.temperature().ifPresent(JsonFieldPointer::require);
    }

    @Override
    public List<Observation> read(Instant arrival, byte[] payload) throws RejectedMessageException {
      return JsonText.read(arrival, payload, this);
    }
  }

  /**
   * The payload is a SenML pack in JSON (RFC 8428). Potential and temperature of one moment are one
   * reading. Refuses, with an {@link IllegalArgumentException}, one name for both.
   *
   * @param wanted the numbers, in the unit they have where a record names none, and the full names
   *     of their records
   */
  record SenMlRecords(Wanted wanted) implements MqttReadingFormat {

    public SenMlRecords {
      if (wanted.potential().equals(wanted.temperature())) {
        throw new IllegalArgumentException(
            "expected two names, found one for both: " + wanted.potential().orElse(""));
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
      return SenMlReadings.read(arrival, SenMlPack.resolve(payload), wanted);
    }
  }
}
