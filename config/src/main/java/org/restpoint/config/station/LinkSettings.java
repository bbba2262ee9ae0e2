package org.restpoint.config.station;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/** How a probe's readings come in. */
public sealed interface LinkSettings {

  /** The numbers that the device sends; empty where they are not told apart by name. */
  default Optional<Numbers> sent() {
    return Optional.empty();
  }

  /** How late readings may come and still be taken in the order of their own times. */
  default Duration lateBy() {
    return Duration.ZERO;
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
      implements LinkSettings {

    @Override
    public Optional<Numbers> sent() {
      return Optional.of(numbers);
    }
  }

  /**
   * Messages on a topic of the station's broker.
   *
   * @param topic the topic; a level {@code +} of it says whose message it is
   * @param captured what stands at that level of this probe's messages; empty where it is the
   *     probe's name, or where there is no such level
   * @param payload how a message is read
   * @param times how far the times in messages are trusted
   * @param noDataAfter silence longer than this is told
   */
  record Mqtt(
      String topic,
      Optional<String> captured,
      MqttPayload payload,
      OwnTimes times,
      Duration noDataAfter)
      implements LinkSettings {

    @Override
    public Optional<Numbers> sent() {
      return payload.numbers();
    }

    @Override
    public Duration lateBy() {
      return payload.hasTimes() ? times.lateBy() : Duration.ZERO;
    }
  }

  /**
   * A recording, played at the speed it was made or followed while it grows.
   *
   * @param file the CSV file, resolved against the station file's folder
   * @param layout how it is written; empty for the service's own form
   * @param knownAs what the file calls the probe, where it is not the probe's name
   * @param following how it is followed; empty for one that is played
   */
  record Recording(
      Path file,
      Optional<RecordingLayout> layout,
      Optional<String> knownAs,
      Optional<Following> following)
      implements LinkSettings {

    @Override
    public Optional<Numbers> sent() {
      return layout.map(RecordingLayout::numbers);
    }

    @Override
    public Duration lateBy() {
      return following.flatMap(Following::times).map(OwnTimes::lateBy).orElse(Duration.ZERO);
    }
  }

  /**
   * How a growing recording is followed.
   *
   * @param fromStart whether rows that stand in it already are read too
   * @param times how far the rows' own times are trusted; empty where readings are stamped on
   *     arrival
   * @param noDataAfter silence longer than this is told
   */
  record Following(boolean fromStart, Optional<OwnTimes> times, Duration noDataAfter) {}

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
