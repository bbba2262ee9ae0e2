package org.restpoint.config.file;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.restpoint.config.station.DecimalMark;
import org.restpoint.config.station.LineFormat;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.SerialPort;
import org.restpoint.config.station.SerialPort.Handshake;
import org.restpoint.config.station.SerialPort.Parity;

/** Reads a serial link. */
final class SerialReader {

  /** The keys of a serial link. */
  static final List<String> KEYS =
      Stream.of(
              SerialPortReader.KEYS,
              LineFormatReader.KEYS,
              List.of("line"),
              NumbersReader.KEYS,
              List.of("decimal", "channel", "poll", "every", "no-data-after"))
          .flatMap(List::stream)
          .toList();

  /** How most meters are set as they leave the maker: common practice. */
  private static final SerialPort USUAL =
      new SerialPort("", 9600, 8, Parity.NONE, 1, Handshake.NONE, true, true);

  private static final String A_POLL = "1 to 256 ASCII characters, e.g. \"READ\\r\\n\"";
  private static final int LONGEST_POLL = 256;
  private static final String A_CHANNEL =
      "what the group channel holds in this probe's lines, 1 to 32 characters, e.g. \"2\"";
  private static final int LONGEST_CHANNEL = 32;

  private final Section keys;
  private final boolean thermometer;

  /**
   * A reader for one link.
   *
   * @param thermometer whether the probe is a thermometer rather than an electrode
   */
  SerialReader(Section keys, boolean thermometer) {
    this.keys = keys;
    this.thermometer = thermometer;
  }

  Optional<LinkSettings> read() {
    keys.only(KEYS);
    Optional<SerialPort> port = SerialPortReader.read(keys, USUAL);
    LineFormat format = LineFormatReader.read(keys);
    String group = NumbersReader.needed(thermometer);
    Optional<Entry> written = keys.need("line", "a pattern with the named group " + group);
    Optional<Pattern> line = written.flatMap(this::line);
    Optional<Numbers> numbers = line.flatMap(pattern -> numbers(pattern, written));
    DecimalMark decimal =
        SerialPortReader.word(keys, "decimal", DecimalMark.values(), DecimalMark.POINT);
    Optional<String> channel =
        line.flatMap(pattern -> written.flatMap(entry -> channel(pattern, entry)));
    Optional<String> poll = keys.find("poll").flatMap(SerialReader::poll);
    Duration every = keys.find("every").flatMap(Allowed.WAIT::span).orElse(Duration.ofSeconds(1));
    if (keys.has("every")) {
      keys.need("poll", "what to send, as every says how often");
    }
    Duration noData =
        keys.find("no-data-after").flatMap(Allowed.WAIT::span).orElse(Duration.ofSeconds(30));
    return port.flatMap(
        opened ->
            numbers.map(
                sent ->
                    new LinkSettings.Serial(
                        opened,
                        format,
                        line.orElseThrow(),
                        sent,
                        decimal,
                        channel,
                        poll,
                        every,
                        noData)));
  }

  private Optional<Pattern> line(Entry entry) {
    return LinePattern.read(
        entry, thermometer ? NumbersReader.TEMPERATURES : NumbersReader.POTENTIALS);
  }

  private Optional<Numbers> numbers(Pattern line, Optional<Entry> written) {
    List<String> names = LinePattern.groups(line, NumbersReader.NAMES);
    return written.flatMap(
        entry -> new NumbersReader(keys, thermometer).read(names, entry, "group"));
  }

  /** The channel; a group and a key are there together or not at all. */
  private Optional<String> channel(Pattern line, Entry written) {
    boolean named = !LinePattern.groups(line, List.of("channel")).isEmpty();
    if (!named && keys.has("channel")) {
      written.refuse(
          "a group channel, as the key channel says which, e.g. (?<channel>\\d+)",
          "a pattern without it");
      return Optional.empty();
    }
    Optional<Entry> entry = named ? keys.need("channel", A_CHANNEL) : Optional.empty();
    return entry.flatMap(SerialReader::channel);
  }

  private static Optional<String> channel(Entry entry) {
    Optional<String> text = entry.freeText(A_CHANNEL).map(String::strip);
    if (text.isPresent() && (text.get().isEmpty() || text.get().length() > LONGEST_CHANNEL)) {
      entry.refuse(A_CHANNEL);
      return Optional.empty();
    }
    return text;
  }

  private static Optional<String> poll(Entry entry) {
    Optional<String> text = entry.freeText(A_POLL);
    if (text.isEmpty()) {
      return text;
    }
    boolean fits = StandardCharsets.US_ASCII.newEncoder().canEncode(text.get());
    if (!fits || text.get().isEmpty() || text.get().length() > LONGEST_POLL) {
      entry.refuse(A_POLL);
      return Optional.empty();
    }
    return text;
  }
}
