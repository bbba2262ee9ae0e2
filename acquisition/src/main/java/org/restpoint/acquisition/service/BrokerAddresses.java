package org.restpoint.acquisition.service;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Supplier;
import org.restpoint.adapters.mqtt.BrokerAddress;
import org.restpoint.config.station.Broker;

/** Where a station's broker is and who asks for it. */
public final class BrokerAddresses {

  private BrokerAddresses() {}

  /** A broker of its own. */
  public static BrokerAddress remote(Broker.Remote remote) {
    return new BrokerAddress(remote.url(), remote.user(), password(remote.passwordFile()));
  }

  /** The broker inside the service. */
  static BrokerAddress embedded(int port) {
    return BrokerAddress.anonymous(URI.create("tcp://127.0.0.1:" + port));
  }

  /**
   * The broker as another command finds it.
   *
   * @param broker what the station file says
   * @param noted where the running service noted that its own broker is
   */
  public static Optional<BrokerAddress> found(Broker broker, Optional<String> noted) {
    if (broker instanceof Broker.Remote remote) {
      return Optional.of(remote(remote));
    }
    return noted.map(url -> BrokerAddress.anonymous(URI.create(url)));
  }

  private static Supplier<char[]> password(Optional<Path> file) {
    return () -> file.map(BrokerAddresses::firstLine).orElse("").toCharArray();
  }

  private static String firstLine(Path file) {
    try (var lines = Files.lines(file)) {
      return lines.findFirst().orElse("");
    } catch (IOException e) {
      throw new UncheckedIOException(
          "password-file %s cannot be read: %s".formatted(file, e.getMessage()), e);
    }
  }
}
