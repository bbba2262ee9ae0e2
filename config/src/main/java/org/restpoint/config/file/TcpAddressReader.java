package org.restpoint.config.file;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.restpoint.config.station.ModbusConnection;

/** Reads where a Modbus device or gateway listens. */
final class TcpAddressReader {

  private static final String AN_ADDRESS =
      "an address with or without its port, e.g. \"192.168.4.7:502\"";
  private static final Pattern ADDRESS =
      Pattern.compile(
          "(?:\\[(?<six>[0-9A-Fa-f:.%]{2,64})\\]|(?<host>[A-Za-z0-9._-]{1,253}))(?::(?<port>\\d{1,5}))?");
  private static final int USUAL_PORT = 502;
  private static final int MOST_PORT = 65_535;

  private TcpAddressReader() {}

  static Optional<ModbusConnection> read(Entry entry) {
    Optional<String> text = entry.freeText(AN_ADDRESS);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Matcher matcher = ADDRESS.matcher(text.get());
    if (!matcher.matches()) {
      entry.refuse(AN_ADDRESS);
      return Optional.empty();
    }
    int port = Optional.ofNullable(matcher.group("port")).map(Integer::parseInt).orElse(USUAL_PORT);
    if (port < 1 || port > MOST_PORT) {
      entry.refuse("a port from 1 to " + MOST_PORT);
      return Optional.empty();
    }
    return Optional.ofNullable(matcher.group("six"))
        .or(() -> Optional.ofNullable(matcher.group("host")))
        .map(host -> new ModbusConnection.Network(host, port));
  }
}
