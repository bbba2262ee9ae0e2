package org.restpoint.acquisition.metrics;

import java.io.IOException;
import java.net.BindException;
import java.util.Locale;
import org.restpoint.config.station.HttpAddress;

/**
 * Metrics and health cannot be served; the message is for the person who wrote the station file.
 */
public final class HttpTroubleException extends Exception {

  private static final long serialVersionUID = 1;

  /** Below this port an ordinary account may not listen on Unix systems. */
  private static final int FIRST_FREE_PORT = 1024;

  private static final String REMEDY =
      " Set http in the station file to another port, to port 0 for a free one, or leave it out.";

  private HttpTroubleException(String message) {
    super(message);
  }

  private HttpTroubleException(String message, IOException cause) {
    super(message, cause);
  }

  /** The address could not be listened on. */
  static HttpTroubleException notOpened(HttpAddress address, IOException cause) {
    String why = String.valueOf(cause.getMessage());
    String where = "http %s ".formatted(words(address));
    if (why.toLowerCase(Locale.ROOT).contains("permission") && address.port() < FIRST_FREE_PORT) {
      return new HttpTroubleException(
          where + "may not be opened: ports below 1024 are for the administrator." + REMEDY, cause);
    }
    if (cause instanceof BindException && why.contains("in use")) {
      return new HttpTroubleException(
          where + "is taken: another program listens there." + REMEDY, cause);
    }
    return new HttpTroubleException(where + "cannot be opened: " + why + "." + REMEDY, cause);
  }

  /** The address is not on this machine alone. */
  static HttpTroubleException notLoopback(HttpAddress address) {
    return new HttpTroubleException(
        "http %s is not a loopback address. Set http in the station file to 127.0.0.1 and a port,"
                .formatted(words(address))
            + " and let a proxy on this machine serve others.");
  }

  private static String words(HttpAddress address) {
    String host = address.host().contains(":") ? "[" + address.host() + "]" : address.host();
    return host + ":" + address.port();
  }
}
