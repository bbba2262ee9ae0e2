package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Instructions from the broker, none lost: a session that the broker keeps while the service is
 * away, and a message that the broker keeps until it has been acknowledged here, by hand, after it
 * was stored.
 *
 * <p>A message can come more than once; whoever takes it tells duplicates by its {@code id}. The
 * session is the client's name at the broker: two services with the same name push each other out.
 * A topic that is no longer asked for stays subscribed in the session until it is cleared at the
 * broker.
 */
public final class InstructionInbox implements AutoCloseable {

  private static final int MOST_WAITING = 1_024;
  private static final int LONGEST_BYTES = 65_536;
  private static final int MOST_IN_FLIGHT = 8;
  private static final Duration TICK = Duration.ofSeconds(1);

  private final List<String> topics;
  private final Consumer<Instruction> consumer;
  private final BrokerListener listener;
  private final Duration patience;
  private final LongSupplier nanos;
  private final ConnectionKeeper keeper;
  private final BlockingQueue<Delivery> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
  private final ConcurrentLinkedQueue<Delivery> stored = new ConcurrentLinkedQueue<>();
  private final AtomicLong received = new AtomicLong();
  private final AtomicLong delivered = new AtomicLong();
  private final AtomicLong rejected = new AtomicLong();
  private final AtomicLong fetchedAgain = new AtomicLong();
  private final AtomicLong acknowledged = new AtomicLong();
  private volatile @Nullable BrokerConnection flooded;
  private int outstanding;
  private long lastProgressNanos;

  /**
   * Prepares an inbox.
   *
   * @param broker where the instructions come from
   * @param clientId the session's name at the broker; the same after a restart
   * @param topics topics or filters, at least one
   * @param times how patient the client is
   * @param consumer takes each message, on the inbox's own thread; one that throws leaves the
   *     message unacknowledged
   * @param listener told when the broker comes and goes
   * @param clock the time of day, for health
   * @param nanos a clock that only runs forward, in nanoseconds
   */
  public InstructionInbox(
      BrokerAddress broker,
      String clientId,
      List<String> topics,
      ConnectionTimes times,
      Consumer<Instruction> consumer,
      BrokerListener listener,
      InstantSource clock,
      LongSupplier nanos) {
    if (topics.isEmpty()) {
      throw new IllegalArgumentException("an inbox needs a topic");
    }
    this.topics = List.copyOf(topics);
    this.consumer = consumer;
    this.listener = listener;
    this.patience = times.answer();
    this.nanos = nanos;
    ConnectionPlan plan =
        new ConnectionPlan(clientId, false, true, Optional.empty(), MOST_IN_FLIGHT);
    this.keeper =
        new ConnectionKeeper(broker, plan, times, new Listening(), listener, clock, nanos);
  }

  /** Begins to connect and to listen. Called once. */
  public void start() {
    keeper.start();
  }

  /** How the connection is now. Never blocks. */
  public BrokerHealth check() {
    return keeper.check();
  }

  /** What has come so far. */
  public InboxCounts counts() {
    return new InboxCounts(
        received.get(), delivered.get(), rejected.get(), fetchedAgain.get(), acknowledged.get());
  }

  /** Sends the acknowledgements that wait and disconnects, within 2 s. Idempotent. */
  @Override
  public void close() {
    keeper.close();
  }

  private record Delivery(BrokerConnection from, Arrival arrival, AtomicBoolean settled) {

    Delivery(BrokerConnection from, Arrival arrival) {
      this(from, arrival, new AtomicBoolean());
    }
  }

  private final class Listening implements Conversation {

    @Override
    public void hold(BrokerConnection connection, Runnable greeted) throws BrokerFault {
      List<String> refused = connection.subscribe(topics, 1, keeper::isClosing);
      if (!refused.isEmpty()) {
        throw new BrokerFault(connection.diagnosis().subscriptionRefused(refused.get(0)));
      }
      outstanding = 0;
      greeted.run();
      while (!keeper.isClosing()) {
        connection.requireAlive();
        acknowledgeStored(connection);
        @Nullable Delivery next = waiting.poll();
        if (next != null) {
          take(connection, next);
        } else if (connection.equals(flooded) && isQuiet()) {
          throw new BrokerFault(connection.diagnosis().flooded(MOST_WAITING));
        } else {
          keeper.doorbell().await(TICK);
        }
      }
      acknowledgeStored(connection);
    }

    /** When there is no room the broker keeps the message, and a new connection fetches it. */
    @Override
    public void arrived(BrokerConnection from, Arrival arrival) {
      received.incrementAndGet();
      if (!waiting.offer(new Delivery(from, arrival))) {
        fetchedAgain.incrementAndGet();
        flooded = from;
      }
    }
  }

  private void take(BrokerConnection connection, Delivery delivery) throws BrokerFault {
    Arrival arrival = delivery.arrival();
    if (!delivery.from().equals(connection)) {
      fetchedAgain.incrementAndGet();
    } else if (arrival.payload().length > LONGEST_BYTES) {
      rejected.incrementAndGet();
      keeper.tell(() -> listener.trouble(tooLong(arrival)));
      acknowledge(connection, delivery);
    } else {
      delivered.incrementAndGet();
      outstanding += arrival.qos() > 0 ? 1 : 0;
      lastProgressNanos = nanos.getAsLong();
      hand(delivery);
    }
  }

  /** Nothing is owed by the consumer, or nothing has been stored for a while. */
  private boolean isQuiet() {
    return stored.isEmpty()
        && (outstanding == 0 || nanos.getAsLong() - lastProgressNanos > patience.toNanos());
  }

  private void hand(Delivery delivery) {
    Arrival arrival = delivery.arrival();
    Instruction instruction =
        new Instruction(
            arrival.topic(),
            arrival.payload(),
            arrival.retained(),
            arrival.duplicate(),
            () -> {
              if (delivery.settled().compareAndSet(false, true)) {
                stored.add(delivery);
                keeper.doorbell().ring();
              }
            });
    try {
      consumer.accept(instruction);
    } catch (RuntimeException e) {
      keeper.tell(() -> listener.trouble(notStored(arrival, e)));
    }
  }

  private void acknowledgeStored(BrokerConnection connection) throws BrokerFault {
    for (@Nullable Delivery next = stored.poll(); next != null; next = stored.poll()) {
      acknowledge(connection, next);
      outstanding -= next.from().equals(connection) && next.arrival().qos() > 0 ? 1 : 0;
      lastProgressNanos = nanos.getAsLong();
    }
  }

  private void acknowledge(BrokerConnection connection, Delivery delivery) throws BrokerFault {
    if (delivery.from().equals(connection) && delivery.arrival().qos() > 0) {
      connection.acknowledge(delivery.arrival());
      acknowledged.incrementAndGet();
    }
  }

  private static BrokerTrouble tooLong(Arrival arrival) {
    return new BrokerTrouble(
        "instruction-too-long",
        "a message of %d bytes on %s was rejected: an instruction has at most %d"
            .formatted(arrival.payload().length, arrival.topic(), LONGEST_BYTES),
        "Send a shorter instruction.");
  }

  private static BrokerTrouble notStored(Arrival arrival, RuntimeException cause) {
    return new BrokerTrouble(
        "instruction-not-stored",
        "a message on %s could not be taken (%s); the broker keeps it and sends it again after the"
                .formatted(arrival.topic(), cause.getMessage())
            + " next connection",
        "Check the journal's disk: space left, permissions, and that it is still there.");
  }
}
