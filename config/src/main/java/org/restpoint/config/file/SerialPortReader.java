package org.restpoint.config.file;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.station.SerialPort;
import org.restpoint.config.station.SerialPort.Handshake;
import org.restpoint.config.station.SerialPort.Parity;

/** Reads how a serial port is opened, for every link that has one. */
final class SerialPortReader {

  /** The keys of a serial port. */
  static final List<String> KEYS =
      List.of("port", "baud", "data-bits", "parity", "stop-bits", "handshake", "dtr", "rts");

  private static final String A_PORT = "a serial port, e.g. /dev/ttyUSB0 or COM3";
  private static final int LONGEST_PORT = 255;
  private static final long SLOWEST = 50;
  private static final long FASTEST = 4_000_000;
  private static final int FEWEST_DATA_BITS = 7;
  private static final int MOST_DATA_BITS = 8;
  private static final int MOST_STOP_BITS = 2;

  private SerialPortReader() {}

  /**
   * Reads a port.
   *
   * @param usual what holds where a key is left out; its name is not looked at
   */
  static Optional<SerialPort> read(Section keys, SerialPort usual) {
    Optional<String> name = keys.need("port", A_PORT).flatMap(SerialPortReader::name);
    int baud = whole(keys, "baud", SLOWEST, FASTEST, usual.baud());
    int dataBits = whole(keys, "data-bits", FEWEST_DATA_BITS, MOST_DATA_BITS, usual.dataBits());
    Parity parity = word(keys, "parity", Parity.values(), usual.parity());
    int stopBits = whole(keys, "stop-bits", 1, MOST_STOP_BITS, usual.stopBits());
    Handshake handshake = word(keys, "handshake", Handshake.values(), usual.handshake());
    boolean dtr = keys.find("dtr").flatMap(Entry::flag).orElse(usual.dtr());
    boolean rts = keys.find("rts").flatMap(Entry::flag).orElse(usual.rts());
    if (handshake == Handshake.RTS_CTS) {
      keys.find("rts")
          .ifPresent(entry -> entry.refuse("no rts, as the handshake rts-cts uses that line"));
    }
    return name.map(
        port -> new SerialPort(port, baud, dataBits, parity, stopBits, handshake, dtr, rts));
  }

  private static int whole(Section keys, String key, long least, long most, int usual) {
    return keys.find(key)
        .flatMap(value -> value.whole(least, most))
        .map(Long::intValue)
        .orElse(usual);
  }

  /** One of an enumeration's names, written in lower case with hyphens. */
  static <E extends Enum<E>> E word(Section keys, String key, E[] values, E usual) {
    List<String> words = Stream.of(values).map(SerialPortReader::written).toList();
    return keys.find(key)
        .flatMap(value -> value.word(words))
        .map(word -> values[words.indexOf(word)])
        .orElse(usual);
  }

  private static String written(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static Optional<String> name(Entry entry) {
    Optional<String> text = entry.freeText(A_PORT);
    if (text.isEmpty()) {
      return text;
    }
    String name = text.get();
    if (name.isBlank()
        || name.length() > LONGEST_PORT
        || name.chars().anyMatch(Character::isISOControl)) {
      entry.refuse(A_PORT);
      return Optional.empty();
    }
    return text;
  }
}
