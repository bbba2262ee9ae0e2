package org.restpoint.config.file;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.SensorCommand;
import org.restpoint.config.station.SensorCommand.Kind;
import org.restpoint.config.station.SerialPort;
import org.restpoint.config.station.SerialPort.Handshake;
import org.restpoint.config.station.SerialPort.Parity;

/** Reads a link to a sensor on an SDI-12 bus. */
final class Sdi12Reader {

  /** The keys of a sensor. */
  static final List<String> KEYS =
      Stream.of(
              SerialPortReader.KEYS,
              List.of("address", "command", "crc"),
              NumbersReader.NAMES,
              NumbersReader.KEYS,
              List.of("every", "answer-within", "retries", "no-data-after"))
          .flatMap(List::stream)
          .toList();

  /** How most converters are set as they leave the maker: common practice. */
  private static final SerialPort USUAL =
      new SerialPort("", 9600, 8, Parity.NONE, 1, Handshake.NONE, true, true);

  private static final String AN_ADDRESS =
      "the sensor's address, one of 0 to 9, A to Z and a to z, e.g. \"0\"";
  private static final Pattern ADDRESS = Pattern.compile("[0-9A-Za-z]");

  private static final String A_COMMAND =
      "what the sensor is asked: M, M1 to M9, C, C1 to C9 or R0 to R9";
  private static final Pattern COMMAND = Pattern.compile("[MC][1-9]?|R[0-9]");

  /** One digit tells how many values an M brings, two digits how many a C brings. */
  private static final int MOST_ALONE = 9;

  private static final int MOST_VALUES = 99;
  private static final Allowed PATIENCE = Allowed.from(Measure.TIME, "10 ms", "1 min");
  private static final long MOST_RETRIES = 10;
  private static final int SILENT_ASKS = 3;
  private static final Duration LEAST_SILENCE = Duration.ofMinutes(1);

  private final Section keys;
  private final boolean thermometer;

  /**
   * A reader for one link.
   *
   * @param thermometer whether the probe is a thermometer rather than an electrode
   */
  Sdi12Reader(Section keys, boolean thermometer) {
    this.keys = keys;
    this.thermometer = thermometer;
  }

  Optional<LinkSettings> read() {
    keys.only(KEYS);
    Optional<SerialPort> port = SerialPortReader.read(keys, USUAL);
    Optional<String> address = keys.need("address", AN_ADDRESS).flatMap(Sdi12Reader::address);
    SensorCommand command =
        keys.find("command").flatMap(Sdi12Reader::command).orElse(new SensorCommand(Kind.ALONE, 0));
    boolean checked = keys.find("crc").flatMap(Entry::flag).orElse(false);
    // A name that was told as misspelled is not told as missing too.
    List<String> names =
        NumbersReader.NAMES.stream().filter(name -> keys.has(name) || keys.meant(name)).toList();
    Optional<Numbers> numbers =
        new NumbersReader(keys, thermometer).read(names, keys.self(), "key");
    int most = command.kind() == Kind.ALONE ? MOST_ALONE : MOST_VALUES;
    OptionalInt potential = place(NumbersReader.POTENTIALS, most);
    OptionalInt temperature = place(NumbersReader.TEMPERATURES, most);
    tellOneValueTwice(potential, temperature);
    Duration every = keys.find("every").flatMap(Allowed.WAIT::span).orElse(Duration.ofSeconds(10));
    Duration patience =
        keys.find("answer-within").flatMap(PATIENCE::span).orElse(Duration.ofSeconds(1));
    long retries = keys.find("retries").flatMap(value -> value.whole(0, MOST_RETRIES)).orElse(2L);
    Duration noData = noData(every);
    boolean placed =
        numbers.isPresent()
            && numbers.get().potential().isPresent() == potential.isPresent()
            && numbers.get().temperature().isPresent() == temperature.isPresent();
    if (port.isEmpty() || address.isEmpty() || !placed) {
      return Optional.empty();
    }
    return Optional.of(
        new LinkSettings.Sdi12(
            port.get(),
            address.get().charAt(0),
            command,
            checked,
            numbers.get(),
            potential,
            temperature,
            every,
            patience,
            (int) retries,
            noData));
  }

  private static Optional<String> address(Entry entry) {
    return matching(entry, entry.freeText(AN_ADDRESS), ADDRESS, AN_ADDRESS);
  }

  private static Optional<SensorCommand> command(Entry entry) {
    return matching(entry, entry.text(A_COMMAND), COMMAND, A_COMMAND)
        .map(
            text ->
                new SensorCommand(
                    switch (text.charAt(0)) {
                      case 'M' -> Kind.ALONE;
                      case 'C' -> Kind.CONCURRENT;
                      default -> Kind.CONTINUOUS;
                    },
                    text.length() == 1 ? 0 : text.charAt(1) - '0'));
  }

  private static Optional<String> matching(
      Entry entry, Optional<String> text, Pattern pattern, String expected) {
    if (text.isPresent() && !pattern.matcher(text.get()).matches()) {
      entry.refuse(expected);
      return Optional.empty();
    }
    return text;
  }

  /** Which value has the first of these names that is there. */
  private OptionalInt place(List<String> names, int most) {
    return names.stream()
        .filter(keys::has)
        .findFirst()
        .flatMap(keys::find)
        .flatMap(entry -> entry.whole(1, most))
        .map(place -> OptionalInt.of(place.intValue()))
        .orElse(OptionalInt.empty());
  }

  private void tellOneValueTwice(OptionalInt potential, OptionalInt temperature) {
    if (potential.isPresent() && potential.equals(temperature)) {
      NumbersReader.TEMPERATURES.stream()
          .flatMap(name -> keys.find(name).stream())
          .findFirst()
          .ifPresent(entry -> entry.refuse("another of the values than that of the potential"));
    }
  }

  private Duration noData(Duration every) {
    Duration silence = every.multipliedBy(SILENT_ASKS);
    Duration usual = silence.compareTo(LEAST_SILENCE) < 0 ? LEAST_SILENCE : silence;
    Optional<Entry> entry = keys.find("no-data-after");
    Optional<Duration> written = entry.flatMap(Allowed.WAIT::span);
    if (written.isPresent() && written.get().compareTo(every) <= 0) {
      entry.get().refuse("a time longer than every, or each ask is told as silence");
    }
    return written.orElse(usual);
  }
}
