package org.restpoint.config.station;

import java.net.URI;
import java.nio.file.Path;
import java.util.Optional;

/** Where messages go. */
public sealed interface Broker {

  /**
   * A broker inside the service, on loopback.
   *
   * @param port TCP port; 0 takes a free one
   */
  record Embedded(int port) implements Broker {

    /** Checks the port. */
    public Embedded {
      if (port < 0 || port > 65_535) {
        throw new IllegalArgumentException("a TCP port is 0 to 65535: " + port);
      }
    }
  }

  /**
   * A broker of its own.
   *
   * @param url {@code tcp://host:port}
   * @param user its user, if it asks for one
   * @param passwordFile a file whose first line is the password
   */
  record Remote(URI url, Optional<String> user, Optional<Path> passwordFile) implements Broker {}
}
