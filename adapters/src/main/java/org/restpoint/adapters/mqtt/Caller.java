package org.restpoint.adapters.mqtt;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/**
 * Asks a running service something and hears its answers: one connection, used by one thread, never
 * made again.
 */
public final class Caller implements AutoCloseable {

  private static final int MOST_WAITING = 1_024;
  private static final int MOST_IN_FLIGHT = 8;

  private final BrokerConnection connection;
  private final BlockingQueue<String> answers = new ArrayBlockingQueue<>(MOST_WAITING);

  /**
   * Prepares a caller; opens nothing.
   *
   * @param broker where the service listens
   * @param clientId the caller's name at the broker, unique there
   * @param clock the time of day
   * @param nanos a clock that only runs forward, in nanoseconds
   */
  public Caller(BrokerAddress broker, String clientId, InstantSource clock, LongSupplier nanos) {
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
   * Connects and begins to hear a topic.
   *
   * @throws BrokerException when the broker cannot be reached or does not allow it
   */
  public void open(String answerTopic) throws BrokerException {
    try {
      connection.open(
          arrival -> answers.offer(new String(arrival.payload(), StandardCharsets.UTF_8)),
          () -> false);
      if (!connection.subscribe(List.of(answerTopic), 1, () -> false).isEmpty()) {
        throw new BrokerFault(connection.diagnosis().subscriptionRefused(answerTopic));
      }
    } catch (BrokerFault e) {
      throw new BrokerException(e.trouble());
    }
  }

  /**
   * Sends a message with QoS 1.
   *
   * @throws BrokerException when the connection is gone
   */
  public void send(String topic, String payload) throws BrokerException {
    try {
      connection.publish(1, topic, false, payload);
    } catch (BrokerFault e) {
      throw new BrokerException(e.trouble());
    }
  }

  /** The next message heard; empty when none came within the limit. */
  public Optional<String> next(Duration limit) throws InterruptedException {
    return Optional.ofNullable(answers.poll(limit.toNanos(), TimeUnit.NANOSECONDS));
  }

  /** Disconnects; bounded, idempotent. */
  @Override
  public void close() {
    connection.end(true);
  }
}
