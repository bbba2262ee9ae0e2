package org.restpoint.config.file;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Broker;

/** Reads where messages go. */
final class BrokerReader {

  /** The keys of a broker of its own. */
  static final List<String> REMOTE_KEYS = List.of("url", "user", "password-file");

  /** The keys of the broker inside the service. */
  static final List<String> EMBEDDED_KEYS = List.of("port");

  private static final List<String> ALL_KEYS = List.of("url", "user", "password-file", "embedded");

  static final String A_BROKER = "embedded, or a mapping with url";

  private static final String ADDRESS = "an address like tcp://host:1883";
  private static final int USUAL_PORT = 1883;
  private static final int MOST_PORT = 65_535;

  private final Path folder;

  BrokerReader(Path folder) {
    this.folder = folder;
  }

  Optional<Broker> read(Entry entry) {
    if (!entry.isMapping()) {
      return entry.quietText().isPresent()
          ? entry.word(List.of("embedded"), ", or a mapping with url").map(word -> embedded())
          : refused(entry);
    }
    Optional<Section> section = entry.section(A_BROKER);
    if (section.isEmpty()) {
      return Optional.empty();
    }
    if (section.get().has("embedded")) {
      section.get().only(List.of("embedded"));
      return section.get().find("embedded").flatMap(BrokerReader::readEmbedded);
    }
    return readRemote(section.get());
  }

  private static Optional<Broker> refused(Entry entry) {
    entry.refuse(A_BROKER);
    return Optional.empty();
  }

  private static Broker embedded() {
    return new Broker.Embedded(USUAL_PORT);
  }

  private static Optional<Broker> readEmbedded(Entry entry) {
    Optional<Section> section = entry.section("a mapping with port");
    section.ifPresent(keys -> keys.only(EMBEDDED_KEYS));
    return section.map(
        keys ->
            keys.find("port")
                .flatMap(port -> port.whole(0, MOST_PORT))
                .<Broker>map(port -> new Broker.Embedded(port.intValue()))
                .orElseGet(BrokerReader::embedded));
  }

  private Optional<Broker> readRemote(Section section) {
    section.only(section.has("url") ? REMOTE_KEYS : ALL_KEYS);
    section.kind(List.of("url", "embedded"));
    Optional<URI> url = section.find("url").flatMap(BrokerReader::address);
    Optional<String> user = section.find("user").flatMap(entry -> entry.freeText("a user's name"));
    Optional<Path> password =
        section.find("password-file").flatMap(entry -> StationReader.path(entry, folder));
    if (section.has("password-file")) {
      section.need("user", "the user whose password is in the password-file");
    }
    return url.map(address -> new Broker.Remote(address, user, password));
  }

  private static Optional<URI> address(Entry entry) {
    Optional<String> text = entry.text(ADDRESS);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    if (text.get().contains("@")) {
      // The text is not shown: a password may stand in it.
      entry.refuse(ADDRESS, "one with a user in it", "use the keys user and password-file");
      return Optional.empty();
    }
    try {
      URI url = new URI(text.get());
      if (isHostAndPort(url)) {
        return Optional.of(url);
      }
      if (url.getHost() != null && url.getPort() == -1) {
        entry.refuse(ADDRESS, entry.found(), "add the port, usually :" + USUAL_PORT);
        return Optional.empty();
      }
    } catch (URISyntaxException e) {
      // Told below like any other text that is no such address.
    }
    Optional<String> remedy =
        text.get().startsWith("mqtt:") ? Optional.of("write tcp: for mqtt:") : Optional.empty();
    entry.problems().add(new Problem(entry.key(), entry.line(), ADDRESS, entry.found(), remedy));
    return Optional.empty();
  }

  private static boolean isHostAndPort(URI url) {
    return "tcp".equals(url.getScheme())
        && url.getHost() != null
        && url.getPort() > 0
        && url.getPort() <= MOST_PORT
        && String.valueOf(url.getRawPath()).isEmpty()
        && url.getRawQuery() == null
        && url.getRawFragment() == null;
  }
}
