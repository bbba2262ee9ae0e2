package org.restpoint.acquisition.metrics;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.restpoint.config.station.HttpAddress;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Serves {@code /metrics} and {@code /health} to programs on this machine, and nothing else.
 *
 * <p>Constructing opens nothing; {@link #start()} listens; {@link #close()} is idempotent and done
 * within a second. At most four callers are answered at once and sixteen wait; more are hung up on.
 * A caller that sends or takes slowly is hung up on after ten seconds.
 */
public final class HttpEndpoint implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(HttpEndpoint.class);

  private static final int THREADS = 4;
  private static final int WAITING = 16;
  private static final String TEXT = "text/plain; charset=utf-8";

  /** The JDK's server has no limits of its own and takes them only as system properties. */
  private static final Map<String, String> SERVER_LIMITS =
      Map.of(
          "sun.net.httpserver.maxReqTime", "10",
          "sun.net.httpserver.maxRspTime", "10",
          "sun.net.httpserver.nodelay", "true");

  private final HttpAddress address;
  private final Metrics metrics;
  private final Supplier<HealthReport> health;
  private @Nullable HttpServer server;
  private @Nullable ExecutorService threads;
  private boolean closed;

  private record Reply(int status, String contentType, String text) {}

  /**
   * An endpoint, not open yet.
   *
   * @param address a loopback address; port 0 takes a free one
   * @param metrics what {@code /metrics} shows
   * @param health what {@code /health} shows; called on a thread of the endpoint, must not block
   */
  public HttpEndpoint(HttpAddress address, Metrics metrics, Supplier<HealthReport> health) {
    this.address = address;
    this.metrics = metrics;
    this.health = health;
  }

  /**
   * Listens from now on.
   *
   * @return the address listened on, with the port that was taken
   * @throws HttpTroubleException when the address is taken, not permitted or not loopback, with
   *     what to do about it
   * @throws IllegalStateException when started before or closed
   */
  public synchronized HttpAddress start() throws HttpTroubleException {
    if (closed || server != null) {
      throw new IllegalStateException("an http endpoint is started once");
    }
    InetAddress host = loopback();
    SERVER_LIMITS.forEach(
        (name, value) -> System.setProperty(name, System.getProperty(name, value)));
    HttpServer opened = open(host);
    threads =
        new ThreadPoolExecutor(
            THREADS,
            THREADS,
            1,
            TimeUnit.MINUTES,
            new ArrayBlockingQueue<>(WAITING),
            task -> {
              Thread thread = new Thread(task, "http");
              thread.setDaemon(true);
              return thread;
            });
    opened.setExecutor(threads);
    opened.createContext("/", this::handle);
    opened.start();
    server = opened;
    return new HttpAddress(address.host(), opened.getAddress().getPort());
  }

  @Override
  public synchronized void close() {
    closed = true;
    if (server != null) {
      server.stop(0);
      server = null;
    }
    if (threads != null) {
      threads.shutdownNow();
      threads = null;
    }
  }

  private InetAddress loopback() throws HttpTroubleException {
    try {
      InetAddress host = InetAddress.getByName(address.host());
      if (host.isLoopbackAddress()) {
        return host;
      }
      throw HttpTroubleException.notLoopback(address);
    } catch (UnknownHostException e) {
      throw HttpTroubleException.notOpened(address, e);
    }
  }

  private HttpServer open(InetAddress host) throws HttpTroubleException {
    try {
      return HttpServer.create(new InetSocketAddress(host, address.port()), WAITING);
    } catch (IOException e) {
      throw HttpTroubleException.notOpened(address, e);
    }
  }

  private void handle(HttpExchange exchange) throws IOException {
    try (exchange) {
      Reply reply;
      try {
        reply = reply(exchange);
      } catch (RuntimeException e) {
        LOG.warn("http: a request could not be answered", e);
        reply = new Reply(500, TEXT, "This could not be answered; the service's log says why.\n");
      }
      send(exchange, reply);
    }
  }

  private Reply reply(HttpExchange exchange) {
    String path = exchange.getRequestURI().getPath();
    if (!"/metrics".equals(path) && !"/health".equals(path)) {
      return new Reply(404, TEXT, "There is /metrics and /health here.\n");
    }
    String method = exchange.getRequestMethod();
    if (!"GET".equals(method) && !"HEAD".equals(method)) {
      exchange.getResponseHeaders().set("Allow", "GET, HEAD");
      return new Reply(405, TEXT, "Only GET and HEAD are answered here.\n");
    }
    if ("/health".equals(path)) {
      HealthReport report = health.get();
      return new Reply(report.httpStatus(), "application/json", report.json() + "\n");
    }
    Scrape scrape = metrics.scrape(accept(exchange));
    return new Reply(200, scrape.contentType(), scrape.text());
  }

  /** All Accept lines as one: a list may come in several (RFC 9110, section 5.3). */
  private static Optional<String> accept(HttpExchange exchange) {
    return Optional.ofNullable(exchange.getRequestHeaders().get("Accept"))
        .map(lines -> String.join(",", lines));
  }

  private static void send(HttpExchange exchange, Reply reply) throws IOException {
    byte[] body = reply.text().getBytes(StandardCharsets.UTF_8);
    exchange.getResponseHeaders().set("Content-Type", reply.contentType());
    exchange.getResponseHeaders().set("Cache-Control", "no-store");
    if ("HEAD".equals(exchange.getRequestMethod())) {
      exchange.getResponseHeaders().set("Content-Length", Integer.toString(body.length));
      exchange.sendResponseHeaders(reply.status(), -1);
      return;
    }
    exchange.sendResponseHeaders(reply.status(), body.length);
    exchange.getResponseBody().write(body);
  }
}
