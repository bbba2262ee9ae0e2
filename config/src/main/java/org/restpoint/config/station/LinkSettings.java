package org.restpoint.config.station;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** How a probe's readings come in. */
public sealed interface LinkSettings {

  /**
   * Lines from a serial port, 8 data bits, no parity, 1 stop bit.
   *
   * @param port the device's path or name
   * @param baud bits per second
   * @param line the pattern a line must match, with the named group {@code millivolts} and, where
   *     the line carries it, {@code celsius}
   * @param poll what to send to ask for a line; empty for a meter that sends by itself
   * @param pollEvery how often to ask
   * @param noDataAfter silence longer than this is told
   */
  record Serial(
      String port,
      int baud,
      Pattern line,
      Optional<String> poll,
      Duration pollEvery,
      Duration noDataAfter)
      implements LinkSettings {}

  /**
   * Messages on a topic of the station's broker.
   *
   * @param topic the topic
   * @param payload how a message is read
   * @param noDataAfter silence longer than this is told
   */
  record Mqtt(String topic, MqttPayload payload, Duration noDataAfter) implements LinkSettings {}

  /** How an MQTT message is read. */
  sealed interface MqttPayload {

    /** The message is a bare number in mV. */
    record BareNumber() implements MqttPayload {}

    /**
     * The message is JSON.
     *
     * @param millivolts JSON pointer (RFC 6901) to the potential; empty for a thermometer
     * @param celsius JSON pointer to the temperature, where there is one
     */
    record Json(Optional<String> millivolts, Optional<String> celsius) implements MqttPayload {}
  }

  /**
   * A recording played at the speed it was made.
   *
   * @param file the CSV file, resolved against the station file's folder
   */
  record Recording(Path file) implements LinkSettings {}

  /**
   * A simulated electrode or thermometer.
   *
   * @param simulation what is simulated
   * @param interval how often it sends, a whole number of milliseconds
   * @param noDataAfter silence longer than this is told
   * @param faults what goes wrong, and when
   */
  record Simulated(
      Simulation simulation, Duration interval, Duration noDataAfter, List<SimulatedFault> faults)
      implements LinkSettings {

    /** Copies the faults. */
    public Simulated {
      faults = List.copyOf(faults);
    }
  }
}
