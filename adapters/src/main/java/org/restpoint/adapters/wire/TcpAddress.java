package org.restpoint.adapters.wire;

/**
 * Where a device listens for TCP connections. Refuses, with an {@link IllegalArgumentException}, an
 * empty host and a port outside 1 to 65535.
 *
 * @param host its name or address; an IPv6 address without brackets
 * @param port its port
 */
public record TcpAddress(String host, int port) {

  private static final int MOST_PORT = 65_535;

  public TcpAddress {
    if (host.isBlank()) {
      throw new IllegalArgumentException("the host has no name");
    }
    if (port < 1 || port > MOST_PORT) {
      throw new IllegalArgumentException("a port is 1 to 65535, not " + port);
    }
  }

  @Override
  public String toString() {
    return (host.contains(":") ? "[" + host + "]" : host) + ":" + port;
  }
}
