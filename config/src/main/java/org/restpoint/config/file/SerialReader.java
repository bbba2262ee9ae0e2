package org.restpoint.config.file;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.restpoint.config.station.LinkSettings;

/** Reads a serial link. */
final class SerialReader {

  /** The keys of a serial link. */
  static final List<String> KEYS =
      List.of("port", "baud", "line", "poll", "every", "no-data-after");

  private static final String A_PORT = "a serial port, e.g. /dev/ttyUSB0 or COM3";
  private static final String A_POLL = "1 to 256 ASCII characters, e.g. \"READ\\r\\n\"";
  private static final int LONGEST_PORT = 255;
  private static final int LONGEST_POLL = 256;
  private static final long SLOWEST = 50;
  private static final long FASTEST = 4_000_000;
  private static final int USUAL_BAUD = 9600;

  private SerialReader() {}

  static Optional<LinkSettings> read(Section keys, boolean thermometer) {
    keys.only(KEYS);
    String group = thermometer ? "celsius" : "millivolts";
    Optional<String> port = keys.need("port", A_PORT).flatMap(SerialReader::port);
    int baud =
        keys.find("baud")
            .flatMap(value -> value.whole(SLOWEST, FASTEST))
            .map(Long::intValue)
            .orElse(USUAL_BAUD);
    Optional<Pattern> line =
        keys.need("line", "a pattern with the named group " + group)
            .flatMap(value -> LinePattern.read(value, group));
    Optional<String> poll = keys.find("poll").flatMap(SerialReader::poll);
    Duration every = keys.find("every").flatMap(Allowed.WAIT::span).orElse(Duration.ofSeconds(1));
    if (keys.has("every")) {
      keys.need("poll", "what to send, as every says how often");
    }
    Duration noData =
        keys.find("no-data-after").flatMap(Allowed.WAIT::span).orElse(Duration.ofSeconds(30));
    if (port.isEmpty() || line.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new LinkSettings.Serial(port.get(), baud, line.get(), poll, every, noData));
  }

  private static Optional<String> port(Entry entry) {
    return fitting(entry, A_PORT, LONGEST_PORT, false);
  }

  private static Optional<String> poll(Entry entry) {
    return fitting(entry, A_POLL, LONGEST_POLL, true);
  }

  private static Optional<String> fitting(
      Entry entry, String expected, int longest, boolean controls) {
    Optional<String> text = entry.freeText(expected);
    if (text.isEmpty()) {
      return text;
    }
    boolean fits =
        controls
            ? StandardCharsets.US_ASCII.newEncoder().canEncode(text.get())
            : text.get().chars().noneMatch(Character::isISOControl) && !text.get().isBlank();
    if (!fits || text.get().isEmpty() || text.get().length() > longest) {
      entry.refuse(expected);
      return Optional.empty();
    }
    return text;
  }
}
