package org.restpoint.config.station;

import java.util.Optional;

/** How an MQTT message is read. */
public sealed interface MqttPayload {

  /** The numbers in it; empty for a bare one. */
  Optional<Numbers> numbers();

  /** Whether a message carries a time of its own. */
  boolean hasTimes();

  /** The message is a bare number in mV. */
  record BareNumber() implements MqttPayload {

    @Override
    public Optional<Numbers> numbers() {
      return Optional.empty();
    }

    @Override
    public boolean hasTimes() {
      return false;
    }
  }

  /**
   * The message is JSON.
   *
   * @param places the numbers, and JSON pointers (RFC 6901) to them
   * @param time the message's own time; empty where that of its arrival counts
   */
  record Json(Places places, Optional<Time> time) implements MqttPayload {

    @Override
    public Optional<Numbers> numbers() {
      return Optional.of(places.numbers());
    }

    @Override
    public boolean hasTimes() {
      return time.isPresent();
    }
  }

  /**
   * The message is a SenML pack (RFC 8428).
   *
   * @param places the numbers, and the full names of their records
   */
  record SenMl(Places places) implements MqttPayload {

    @Override
    public Optional<Numbers> numbers() {
      return Optional.of(places.numbers());
    }

    @Override
    public boolean hasTimes() {
      return true;
    }
  }

  /**
   * Where the numbers stand.
   *
   * @param numbers what they are
   * @param potential where the potential stands; empty for a thermometer
   * @param temperature where the temperature stands, where there is one
   */
  record Places(Numbers numbers, Optional<String> potential, Optional<String> temperature) {}

  /**
   * Where the time stands.
   *
   * @param pointer JSON pointer to it
   * @param inMilliseconds whether a number counts milliseconds since 1970 rather than seconds
   */
  record Time(String pointer, boolean inMilliseconds) {}
}
