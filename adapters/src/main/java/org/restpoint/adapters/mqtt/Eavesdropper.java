package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/**
 * Hears what is published on topics, and publishes nothing: one connection, used by one thread,
 * never made again. At most 1,024 messages wait; what comes while they do is not heard.
 */
public final class Eavesdropper implements AutoCloseable {

  private static final int MOST_WAITING = 1_024;
  private static final int MOST_IN_FLIGHT = 8;

  private final BrokerConnection connection;
  private final BlockingQueue<TopicMessage> heard = new ArrayBlockingQueue<>(MOST_WAITING);

  /**
   * Prepares it; opens nothing.
   *
   * @param broker where the topics are
   * @param clientId its name at the broker, unique there
   * @param clock the time of day
   * @param nanos a clock that only runs forward, in nanoseconds
   */
  public Eavesdropper(
      BrokerAddress broker, String clientId, InstantSource clock, LongSupplier nanos) {
    this.connection =
        new BrokerConnection(
            broker,
            new ConnectionPlan(clientId, true, false, Optional.empty(), MOST_IN_FLIGHT),
            ConnectionTimes.usual(),
            new Doorbell(),
            clock,
            nanos);
  }

  /**
   * Connects and begins to hear.
   *
   * @param filter a topic, or a filter of MQTT with {@code +} and {@code #}
   * @throws BrokerException when the broker cannot be reached or does not allow it
   */
  public void open(String filter) throws BrokerException {
    try {
      connection.open(arrival -> heard.offer(TopicMessage.of(arrival)), () -> false);
      // QoS 0: there the embedded broker marks retained messages as such.
      if (!connection.subscribe(List.of(filter), 0, () -> false).isEmpty()) {
        throw new BrokerFault(connection.diagnosis().subscriptionRefused(filter));
      }
    } catch (BrokerFault e) {
      throw new BrokerException(e.trouble());
    }
  }

  /**
   * The next message; empty when none came within the limit.
   *
   * @throws BrokerException when none waits and the connection is gone
   */
  public Optional<TopicMessage> next(Duration limit) throws BrokerException, InterruptedException {
    Optional<TopicMessage> next =
        Optional.ofNullable(heard.poll(limit.toNanos(), TimeUnit.NANOSECONDS));
    if (next.isEmpty()) {
      try {
        connection.requireAlive();
      } catch (BrokerFault e) {
        throw new BrokerException(e.trouble());
      }
    }
    return next;
  }

  /** Disconnects; bounded, idempotent. */
  @Override
  public void close() {
    connection.end(true);
  }
}
