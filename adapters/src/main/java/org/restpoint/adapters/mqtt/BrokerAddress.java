package org.restpoint.adapters.mqtt;

import java.net.URI;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Which broker to speak to, and as whom. Refuses, with an {@link IllegalArgumentException}, an
 * address that is not {@code tcp://host} or {@code tcp://host:port}.
 *
 * @param url {@code tcp://host:port}; without a port 1883 is taken
 * @param user the broker's user, if it asks for one
 * @param password read anew for each connection, so a changed password needs no restart; an empty
 *     array for none. Not asked without a user
 */
public record BrokerAddress(URI url, Optional<String> user, Supplier<char[]> password) {

  private static final int USUAL_PORT = 1883;

  public BrokerAddress {
    boolean plain =
        url.getRawPath() == null || url.getRawPath().isEmpty() || url.getRawPath().equals("/");
    if (!"tcp".equals(url.getScheme())
        || url.getHost() == null
        || url.getRawUserInfo() != null
        || url.getRawQuery() != null
        || url.getRawFragment() != null
        || !plain
        || url.getPort() > 65_535
        || url.getPort() == 0) {
      throw new IllegalArgumentException(
          "broker url: expected tcp://host:port, found " + withoutUser(url));
    }
  }

  /** A broker that asks for no user. */
  public static BrokerAddress anonymous(URI url) {
    return new BrokerAddress(url, Optional.empty(), () -> new char[0]);
  }

  /** The broker's name in messages and to the client: scheme, host and port, no user. */
  String display() {
    int port = url.getPort() == -1 ? USUAL_PORT : url.getPort();
    return "tcp://" + url.getHost() + ":" + port;
  }

  private static String withoutUser(URI url) {
    String userInfo = url.getRawUserInfo();
    return userInfo == null ? url.toString() : url.toString().replace(userInfo + "@", "");
  }
}
