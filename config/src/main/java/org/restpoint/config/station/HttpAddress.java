package org.restpoint.config.station;

/**
 * Where metrics and health are served.
 *
 * @param host a loopback address or {@code localhost}
 * @param port TCP port; 0 takes a free one
 */
public record HttpAddress(String host, int port) {

  /** Checks the port. */
  public HttpAddress {
    if (port < 0 || port > 65_535) {
      throw new IllegalArgumentException("a TCP port is 0 to 65535: " + port);
    }
  }
}
