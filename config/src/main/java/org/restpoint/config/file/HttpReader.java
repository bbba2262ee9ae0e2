package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.restpoint.config.station.HttpAddress;

/** Reads where metrics and health are served: on loopback and nowhere else. */
final class HttpReader {

  private static final String LOOPBACK = "a loopback address with a port, e.g. 127.0.0.1:9464";
  private static final Pattern ADDRESS =
      Pattern.compile("(?:\\[(?<six>[^\\]]+)\\]|(?<host>[^:\\[\\]]+)):(?<port>\\d{1,5})");
  private static final Pattern FOUR = Pattern.compile("127((?:\\.\\d{1,3}){3})");
  private static final int MOST_PORT = 65_535;
  private static final int MOST_OCTET = 255;

  private HttpReader() {}

  static Optional<HttpAddress> read(Entry entry) {
    if (entry.isPlainNumberOrFlag()) {
      entry.refuse(LOOPBACK, entry.found(), "put the address before the port");
      return Optional.empty();
    }
    Optional<String> text = entry.text(LOOPBACK);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Matcher matcher = ADDRESS.matcher(text.get());
    if (!matcher.matches() || Integer.parseInt(matcher.group("port")) > MOST_PORT) {
      entry.refuse(LOOPBACK);
      return Optional.empty();
    }
    String six = matcher.group("six");
    String host = six == null ? matcher.group("host") : six;
    if (host == null || !isLoopback(host)) {
      entry.refuse(LOOPBACK, entry.found(), "nothing is served to other machines");
      return Optional.empty();
    }
    return Optional.of(new HttpAddress(host, Integer.parseInt(matcher.group("port"))));
  }

  private static boolean isLoopback(String host) {
    if (List.of("localhost", "::1").contains(host)) {
      return true;
    }
    Matcher four = FOUR.matcher(host);
    return four.matches()
        && Stream.of(four.group(1).substring(1).split("\\.", -1))
            .allMatch(octet -> Integer.parseInt(octet) <= MOST_OCTET);
  }
}
