package org.restpoint.config.station;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/** How a probe's readings come in. */
public sealed interface LinkSettings {

  /** The numbers that the device sends; empty where they are not told apart by name. */
  default Optional<Numbers> sent() {
    return Optional.empty();
  }

  /**
   * Lines from a serial port. Several probes may name one port: its lines are then theirs together.
   *
   * @param port how the port is opened
   * @param format how its bytes become lines
   * @param line the pattern a line must match, with a named group for each of the numbers
   * @param numbers what those numbers are
   * @param decimal what stands before their decimals
   * @param channel what the group {@code channel} holds in a line of this probe, where it has one
   * @param poll what to send to ask for a line; empty for a meter that sends by itself
   * @param pollEvery how often to ask
   * @param noDataAfter silence longer than this is told
   */
  record Serial(
      SerialPort port,
      LineFormat format,
      Pattern line,
      Numbers numbers,
      DecimalMark decimal,
      Optional<String> channel,
      Optional<String> poll,
      Duration pollEvery,
      Duration noDataAfter)
      implements LinkSettings {

    @Override
    public Optional<Numbers> sent() {
      return Optional.of(numbers);
    }
  }

  /**
   * A sensor on an SDI-12 bus behind a serial converter. Several probes may name one port: their
   * sensors are then on one bus.
   *
   * @param port how the converter's port is opened
   * @param address the sensor's address: a digit or an ASCII letter
   * @param command what it is asked to measure
   * @param checked whether its values come with a cyclic redundancy check
   * @param numbers what the numbers are
   * @param potentialPlace which of the values is the potential, from 1; empty for a thermometer
   * @param temperaturePlace which of the values is the temperature, from 1, where one is
   * @param every how often it is asked
   * @param answerWithin how long an answer to a command is waited for
   * @param retries how often a command is sent again
   * @param noDataAfter silence longer than this is told
   */
  record Sdi12(
      SerialPort port,
      char address,
      SensorCommand command,
      boolean checked,
      Numbers numbers,
      OptionalInt potentialPlace,
      OptionalInt temperaturePlace,
      Duration every,
      Duration answerWithin,
      int retries,
      Duration noDataAfter)
      implements LinkSettings {

    @Override
    public Optional<Numbers> sent() {
      return Optional.of(numbers);
    }
  }

  /**
   * Registers of a Modbus device. Several probes may name one port, or one address: they are read
   * in turn.
   *
   * @param bus what the device is joined to
   * @param unit its address on the bus
   * @param numbers what its numbers are
   * @param potential where the potential stands; there with that of the numbers
   * @param temperature where the temperature stands; there with that of the numbers
   * @param every how often it is read
   * @param answerWithin how long an answer is waited for
   * @param retries how many more times it is asked when it did not answer
   * @param noDataAfter silence longer than this is told
   */
  record Modbus(
      ModbusConnection bus,
      int unit,
      Numbers numbers,
      Optional<ModbusRegister> potential,
      Optional<ModbusRegister> temperature,
      Duration every,
      Duration answerWithin,
      int retries,
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
   * A simulated electrode sitting in one solution.
   *
   * @param solution what it sits in
   * @param celsius the solution's temperature in °C
   * @param slopePercent its slope, % of the ideal slope
   * @param offsetMillivolts its potential at 1 mol/L, in mV
   * @param timeConstant how fast it comes to rest
   * @param noiseMillivolts standard deviation of its noise, in mV
   * @param creepMillivoltsPerHour how fast its offset creeps, in mV/h
   * @param interval how often it sends
   * @param seed seed of its noise
   */
  record Simulated(
      Quantity solution,
      double celsius,
      double slopePercent,
      double offsetMillivolts,
      Duration timeConstant,
      double noiseMillivolts,
      double creepMillivoltsPerHour,
      Duration interval,
      long seed)
      implements LinkSettings {}
}
