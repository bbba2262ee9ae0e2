package org.restpoint.config.file;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.ModbusConnection;
import org.restpoint.config.station.ModbusRegister;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.SerialPort;
import org.restpoint.config.station.SerialPort.Handshake;
import org.restpoint.config.station.SerialPort.Parity;

/** Reads a link to a Modbus device. */
final class ModbusReader {

  private static final List<String> PORT_KEYS =
      List.of("port", "baud", "parity", "stop-bits", "dtr", "rts");

  private static final List<String> NAMES =
      NumbersReader.NAMES.stream().filter(name -> !name.equals("counts")).toList();

  /** The keys of a Modbus device. */
  static final List<String> KEYS =
      Stream.of(
              PORT_KEYS,
              List.of("tcp", "unit"),
              NAMES,
              List.of("thermometer", "every", "answer-within", "retries", "no-data-after"))
          .flatMap(List::stream)
          .toList();

  /** What belongs to the numbers of other links. */
  private static final List<String> FOREIGN = List.of("counts", "scale", "offset");

  private static final String OWN_SCALE =
      "each register has its own scale and offset, e.g. millivolts: { register: 0, table: input, as:"
          + " int16, scale: 0.1 }";

  /** As the specification has it, for a device of which nothing else is known. */
  private static final SerialPort USUAL =
      new SerialPort("", 19_200, 8, Parity.EVEN, 1, Handshake.NONE, true, true);

  private static final Allowed ANSWER = Allowed.from(Measure.TIME, "10 ms", "1 min");
  private static final Duration LEAST_NO_DATA = Duration.ofSeconds(30);
  private static final int POLLS_BEFORE_NO_DATA = 3;
  private static final int MOST_UNIT_ON_A_LINE = 247;
  private static final int MOST_UNIT = 255;
  private static final int MOST_RETRIES = 10;

  private final Section keys;
  private final boolean thermometer;

  /**
   * A reader for one link.
   *
   * @param thermometer whether the probe is a thermometer rather than an electrode
   */
  ModbusReader(Section keys, boolean thermometer) {
    this.keys = keys;
    this.thermometer = thermometer;
  }

  Optional<LinkSettings> read() {
    keys.only(KEYS, FOREIGN, OWN_SCALE);
    Optional<ModbusConnection> bus = bus();
    Optional<Integer> unit = unit();
    Optional<Numbers> numbers = numbers();
    Optional<ModbusRegister> potential = register(NumbersReader.POTENTIALS);
    Optional<ModbusRegister> temperature = register(NumbersReader.TEMPERATURES);
    Duration every = keys.find("every").flatMap(Allowed.WAIT::span).orElse(Duration.ofSeconds(1));
    Duration answer =
        keys.find("answer-within").flatMap(ANSWER::span).orElse(Duration.ofSeconds(1));
    int retries =
        keys.find("retries")
            .flatMap(value -> value.whole(0, MOST_RETRIES))
            .map(Long::intValue)
            .orElse(1);
    Duration noData = noDataAfter(every);
    if (bus.isEmpty()
        || unit.isEmpty()
        || numbers.isEmpty()
        || numbers.get().potential().isPresent() != potential.isPresent()
        || numbers.get().temperature().isPresent() != temperature.isPresent()) {
      return Optional.empty();
    }
    return Optional.of(
        new LinkSettings.Modbus(
            bus.get(),
            unit.get(),
            numbers.get(),
            potential,
            temperature,
            every,
            answer,
            retries,
            noData));
  }

  private Optional<ModbusConnection> bus() {
    Optional<String> kind = keys.kind(List.of("port", "tcp"));
    if (!keys.has("tcp")) {
      return keys.has("port")
          ? SerialPortReader.read(keys, USUAL).map(ModbusConnection.Line::new)
          : Optional.empty();
    }
    PORT_KEYS.stream()
        .filter(key -> !keys.has("port"))
        .flatMap(key -> keys.find(key).stream())
        .forEach(entry -> entry.refuse("it only with port", "it beside tcp"));
    Optional<ModbusConnection> network = keys.find("tcp").flatMap(TcpAddressReader::read);
    return kind.flatMap(any -> network);
  }

  private Optional<Integer> unit() {
    int most = keys.has("tcp") ? MOST_UNIT : MOST_UNIT_ON_A_LINE;
    return keys.need("unit", "the device's address, a whole number from 1 to " + most)
        .flatMap(value -> value.whole(1, most))
        .map(Long::intValue);
  }

  private Optional<Numbers> numbers() {
    List<String> names = NAMES.stream().filter(keys::has).toList();
    List<String> own = thermometer ? NumbersReader.TEMPERATURES : NumbersReader.POTENTIALS;
    boolean told =
        names.stream().noneMatch(own::contains)
            && own.stream().anyMatch(name -> keys.has(name) || keys.meant(name));
    return told
        ? Optional.empty()
        : NumbersReader.ofScaled(keys, thermometer).read(names, keys.self(), "register");
  }

  private Optional<ModbusRegister> register(List<String> names) {
    Optional<ModbusRegister> first = Optional.empty();
    for (String name : names) {
      Optional<ModbusRegister> read =
          name.equals("counts") ? Optional.empty() : keys.find(name).flatMap(this::register);
      first = first.or(() -> read);
    }
    return first;
  }

  private Optional<ModbusRegister> register(Entry entry) {
    return entry
        .section("a mapping with register, table and as")
        .flatMap(section -> new ModbusRegisterReader(section).read());
  }

  private Duration noDataAfter(Duration every) {
    Duration some = every.multipliedBy(POLLS_BEFORE_NO_DATA);
    Duration usual = some.compareTo(LEAST_NO_DATA) > 0 ? some : LEAST_NO_DATA;
    Optional<Entry> entry = keys.find("no-data-after");
    Optional<Duration> written = entry.flatMap(Allowed.WAIT::span);
    if (entry.isPresent() && written.filter(span -> span.compareTo(every) <= 0).isPresent()) {
      entry.get().refuse("a time longer than every, between two of which nothing comes");
    }
    return written.orElse(usual);
  }
}
