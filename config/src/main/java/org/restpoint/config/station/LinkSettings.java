package org.restpoint.config.station;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
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
