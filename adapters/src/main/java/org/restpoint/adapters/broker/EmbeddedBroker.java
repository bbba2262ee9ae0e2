package org.restpoint.adapters.broker;

import io.moquette.BrokerConstants;
import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.time.Duration;
import java.util.Properties;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;

/**
 * An MQTT 3.1.1 broker inside the service, on loopback alone, for a bench that has none.
 *
 * <p>It asks for no password, since only this machine reaches it, and keeps everything in memory:
 * retained messages and sessions end with it. What it keeps is bounded: {@value
 * #COMMANDS_WAITING_PER_LOOP} commands for each of its loops, messages of at most {@value
 * #LONGEST_MESSAGE_BYTES} bytes, and what one day brings (QoS 1 alone) for a subscriber that is
 * away; then that subscriber is forgotten. It sends nothing about itself to anybody.
 */
public final class EmbeddedBroker implements AutoCloseable {

  /** A power of two well above the 64 messages that a publisher has under way. */
  static final int COMMANDS_WAITING_PER_LOOP = 1024;

  /** Far above a result with its sample record, which is about 4 KiB. */
  static final int LONGEST_MESSAGE_BYTES = 262_144;

  /** One day, in the broker's own notation: nothing else bounds the queue of an absent session. */
  private static final String KEPT_FOR_THE_ABSENT = "1d";

  private static final String LOOPBACK = "127.0.0.1";
  private static final Duration CLOSE_LIMIT = Duration.ofSeconds(2);
  private static final Duration LEAVE_LIMIT = Duration.ofMillis(500);
  private static final long GLANCE_NANOS = 2_000_000;

  private final int wantedPort;
  private @Nullable Server server;
  private int port;
  private boolean closed;

  /**
   * Prepares a broker; opens nothing.
   *
   * @param port TCP port, 0 to 65535; 0 takes a free one
   */
  public EmbeddedBroker(int port) {
    if (port < 0 || port > 65_535) {
      throw new IllegalArgumentException("a TCP port is 0 to 65535, found " + port);
    }
    this.wantedPort = port;
  }

  /**
   * Starts the broker, once.
   *
   * @return the port it listens on
   * @throws EmbeddedBrokerException if the port is taken or may not be used
   * @throws IllegalStateException if it was started or closed before
   */
  public synchronized int start() throws EmbeddedBrokerException {
    if (server != null || closed) {
      throw new IllegalStateException("the broker was started or closed before");
    }
    int found = findPort();
    Server starting = new Server();
    try {
      starting.startServer(new MemoryConfig(settings(found)));
    } catch (IOException | RuntimeException e) {
      end(starting);
      throw cannotListen(e);
    }
    port = found;
    server = starting;
    return port;
  }

  /**
   * Ends the broker and every connection to it. Idempotent; within 2 s the port is free again,
   * while idle threads of the broker may need about 2 s more to end.
   */
  @Override
  public synchronized void close() {
    closed = true;
    if (server != null) {
      letClientsGo(server);
      end(server);
      server = null;
      awaitTheFreePort();
    }
  }

  /**
   * A look before the start: a broker that fails to listen has threads running already, and one
   * that took a free port does not say at once which. The port may still be taken in between, which
   * the start itself then reports.
   */
  private int findPort() throws EmbeddedBrokerException {
    try {
      return listenOnce(wantedPort);
    } catch (IOException e) {
      throw cannotListen(e);
    }
  }

  private EmbeddedBrokerException cannotListen(Exception cause) {
    return new EmbeddedBrokerException(
        ("the embedded broker cannot listen on %s:%d (%s). "
                + "Stop the program that holds the port, or give broker another port")
            .formatted(LOOPBACK, wantedPort, deepest(cause)),
        cause);
  }

  private static String deepest(Throwable thrown) {
    Throwable last = thrown;
    while (last.getCause() != null) {
      last = last.getCause();
    }
    return String.valueOf(last.getMessage());
  }

  /**
   * What a client's leaving still sets off finds no thread any more once the broker stops, and is
   * told as an error then: so they leave first.
   */
  private static void letClientsGo(Server server) {
    server.listConnectedClients().forEach(client -> letGo(server, client.getClientID()));
    long deadline = System.nanoTime() + LEAVE_LIMIT.toNanos();
    while (!server.listConnectedClients().isEmpty() && System.nanoTime() < deadline) {
      LockSupport.parkNanos(GLANCE_NANOS);
    }
  }

  private static void letGo(Server server, String client) {
    try {
      server.disconnectClient(client);
    } catch (NullPointerException e) {
      // It left by itself just now: the broker looks for a connection that is gone already.
    }
  }

  /**
   * Stopping waits for threads that are quiet for 2 s by design, unless its own thread is
   * interrupted: then it goes on at once and those threads end by themselves.
   */
  private static void end(Server server) {
    Thread ending =
        new Thread(
            () -> {
              Thread.currentThread().interrupt();
              server.stopServer();
            },
            "embedded-broker-end");
    ending.setDaemon(true);
    ending.start();
    try {
      ending.join(CLOSE_LIMIT.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void awaitTheFreePort() {
    long deadline = System.nanoTime() + CLOSE_LIMIT.toNanos();
    while (System.nanoTime() < deadline && !Thread.currentThread().isInterrupted()) {
      try {
        listenOnce(port);
        return;
      } catch (IOException e) {
        // Still taken: the broker's own thread closes the port in a moment.
        LockSupport.parkNanos(GLANCE_NANOS);
      }
    }
  }

  private static int listenOnce(int port) throws IOException {
    try (ServerSocket socket = new ServerSocket()) {
      socket.setReuseAddress(true);
      socket.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
      return socket.getLocalPort();
    }
  }

  private static Properties settings(int port) {
    Properties settings = new Properties();
    settings.setProperty(IConfig.HOST_PROPERTY_NAME, LOOPBACK);
    settings.setProperty(IConfig.PORT_PROPERTY_NAME, Integer.toString(port));
    settings.setProperty(IConfig.ALLOW_ANONYMOUS_PROPERTY_NAME, "true");
    // Many command-line clients send no name and mean one that the broker makes up.
    settings.setProperty(BrokerConstants.ALLOW_ZERO_BYTE_CLIENT_ID_PROPERTY_NAME, "true");
    settings.setProperty(IConfig.PERSISTENCE_ENABLED_PROPERTY_NAME, "false");
    settings.setProperty(IConfig.ENABLE_TELEMETRY_NAME, "false");
    settings.setProperty(IConfig.SESSION_QUEUE_SIZE, Integer.toString(COMMANDS_WAITING_PER_LOOP));
    settings.setProperty(
        IConfig.NETTY_MAX_BYTES_PROPERTY_NAME, Integer.toString(LONGEST_MESSAGE_BYTES));
    settings.setProperty(IConfig.PERSISTENT_CLIENT_EXPIRATION_PROPERTY_NAME, KEPT_FOR_THE_ABSENT);
    return settings;
  }
}
