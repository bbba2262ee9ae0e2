package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.time.InstantSource;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.outbox.Outbox;
import org.restpoint.adapters.outbox.OutboxMessage;

/**
 * Sends what the outbox holds, in its order, and removes a message when the broker has acknowledged
 * it: at least once, never less. After a lost connection it begins again at the oldest message that
 * was not acknowledged.
 *
 * <p>Constructing opens nothing; {@link #start()} returns at once and the broker may be absent. One
 * thread of its own does everything; it is the only one that removes from the outbox.
 */
public final class OutboxPublisher implements AutoCloseable {

  private static final Duration TICK = Duration.ofSeconds(1);
  private static final Duration FAREWELL = Duration.ofSeconds(1);
  private static final int TRANSIENT_UNDER_WAY = 64;

  /** For the presence, and for what the library counts a moment longer than it reports. */
  private static final int SLACK = 64;

  private final PublisherSettings settings;
  private final Outbox outbox;
  private final LongSupplier nanos;
  private final ConnectionKeeper keeper;
  private final SendWindow window;
  private final BlockingQueue<Transient> transients;
  private final Queue<OutboxMessage> fetched = new ArrayDeque<>();
  private final AtomicBoolean rowsCommitted = new AtomicBoolean();
  private final AtomicLong transientSent = new AtomicLong();
  private final AtomicLong transientDropped = new AtomicLong();
  private volatile boolean open;
  private long lastFetched;
  private long lastLookNanos;

  /**
   * Prepares a publisher.
   *
   * @param broker where the messages go
   * @param settings how they go
   * @param outbox what is to be sent; used by the publisher's thread alone
   * @param listener told when the broker comes and goes
   * @param clock the time of day, for health
   * @param nanos a clock that only runs forward, in nanoseconds
   */
  public OutboxPublisher(
      BrokerAddress broker,
      PublisherSettings settings,
      Outbox outbox,
      BrokerListener listener,
      InstantSource clock,
      LongSupplier nanos) {
    this.settings = settings;
    this.outbox = outbox;
    this.nanos = nanos;
    this.window = new SendWindow(settings.window());
    this.transients = new ArrayBlockingQueue<>(settings.transientQueue());
    ConnectionPlan plan =
        new ConnectionPlan(
            settings.clientId(),
            true,
            false,
            Optional.of(settings.presence()),
            settings.window() + TRANSIENT_UNDER_WAY + SLACK);
    this.keeper =
        new ConnectionKeeper(broker, plan, settings.times(), new Sending(), listener, clock, nanos);
  }

  /** Begins to connect and to send. Called once. */
  public void start() {
    keeper.start();
  }

  /** Says that new messages have been committed to the outbox. Never blocks. */
  public void wake() {
    rowsCommitted.set(true);
    keeper.doorbell().ring();
  }

  /**
   * Sends a message that may be lost (QoS 0). Never blocks.
   *
   * @return false when it was dropped: there is no connection, or too many wait
   */
  public boolean publishTransient(String topic, String payload) {
    if (open && transients.offer(new Transient(topic, payload))) {
      keeper.doorbell().ring();
      return true;
    }
    transientDropped.incrementAndGet();
    return false;
  }

  /** How the connection is now. Never blocks. */
  public BrokerHealth check() {
    return keeper.check();
  }

  /** What was sent so far. */
  public PublisherCounts counts() {
    return window.counts(transientSent.get(), transientDropped.get());
  }

  /**
   * Waits a moment for what is under way, says that the service is gone and disconnects, within 2
   * s. What is still in the outbox stays there. Idempotent.
   */
  @Override
  public void close() {
    keeper.close();
  }

  private record Transient(String topic, String payload) {}

  private final class Sending implements Conversation {

    @Override
    public void hold(BrokerConnection connection, Runnable greeted) throws BrokerFault {
      fetched.clear();
      lastFetched = 0;
      rowsCommitted.set(true);
      try {
        greet(connection);
        open = true;
        greeted.run();
        while (!keeper.isClosing()) {
          connection.requireAlive();
          removeAcknowledged(connection);
          boolean sent = fillWindow(connection);
          boolean sentTransients = sendTransients(connection);
          if (window.isStuck(nanos.getAsLong(), settings.times().answer())) {
            throw new BrokerFault(connection.diagnosis().frozen(settings.times().answer()));
          }
          if (!sent && !sentTransients) {
            keeper.doorbell().await(shorter(TICK, settings.times().answer()));
          }
        }
        open = false;
        sayFarewell(connection);
      } finally {
        open = false;
        List<Transient> given = new ArrayList<>();
        transientDropped.addAndGet(transients.drainTo(given));
        window.abandon();
      }
    }

    @Override
    public void arrived(BrokerConnection from, Arrival arrival) {
      // The publisher subscribes to nothing.
    }
  }

  private void greet(BrokerConnection connection) throws BrokerFault {
    Presence presence = settings.presence();
    Answer answer = connection.publishRetained(presence.topic(), presence.here());
    boolean answered = answer.await(settings.times().answer(), keeper::isClosing);
    if (!keeper.isClosing() && (!answered || answer.failure() != null)) {
      connection.requireAlive();
      throw new BrokerFault(connection.diagnosis().frozen(settings.times().answer()));
    }
  }

  /** The acknowledgement of the last word comes after those of all that was sent before it. */
  private void sayFarewell(BrokerConnection connection) throws BrokerFault {
    Presence presence = settings.presence();
    Answer answer = connection.publishRetained(presence.topic(), presence.gone());
    boolean answered = answer.await(FAREWELL, () -> false);
    removeAcknowledged(connection);
    if (!answered || answer.failure() != null) {
      throw new BrokerFault(connection.diagnosis().frozen(FAREWELL));
    }
  }

  private void removeAcknowledged(BrokerConnection connection) throws BrokerFault {
    List<Long> done = new ArrayList<>();
    for (@Nullable Long next = connection.nextAcknowledged();
        next != null;
        next = connection.nextAcknowledged()) {
      if (window.acknowledged(next, nanos.getAsLong())) {
        done.add(next);
      }
    }
    if (!done.isEmpty()) {
      try {
        outbox.remove(done);
      } catch (RuntimeException e) {
        throw outboxFailed(e);
      }
    }
  }

  private boolean fillWindow(BrokerConnection connection) throws BrokerFault {
    if (window.space() == 0) {
      return false;
    }
    if (fetched.isEmpty() && isTimeToLook()) {
      fetch();
    }
    boolean sent = false;
    while (!fetched.isEmpty() && window.space() > 0) {
      OutboxMessage message = fetched.remove();
      window.sent(message.sequence(), nanos.getAsLong());
      connection.publish(
          message.sequence(), message.topic(), message.retained(), message.payload());
      sent = true;
    }
    return sent;
  }

  /** After a wake, after a full batch, and once a second should nobody have said anything. */
  private boolean isTimeToLook() {
    return rowsCommitted.getAndSet(false) || nanos.getAsLong() - lastLookNanos >= TICK.toNanos();
  }

  private void fetch() throws BrokerFault {
    lastLookNanos = nanos.getAsLong();
    try {
      List<OutboxMessage> rows = outbox.unsent(lastFetched, settings.window());
      fetched.addAll(rows);
      if (!rows.isEmpty()) {
        lastFetched = rows.get(rows.size() - 1).sequence();
        rowsCommitted.set(true);
      }
    } catch (RuntimeException e) {
      throw outboxFailed(e);
    }
  }

  private boolean sendTransients(BrokerConnection connection) throws BrokerFault {
    boolean sent = false;
    while (connection.transientUnderWay() < TRANSIENT_UNDER_WAY) {
      @Nullable Transient next = transients.poll();
      if (next == null) {
        return sent;
      }
      transientSent.incrementAndGet();
      connection.publishTransient(next.topic(), next.payload());
      sent = true;
    }
    return sent;
  }

  private static BrokerFault outboxFailed(RuntimeException cause) {
    return new BrokerFault(
        new BrokerTrouble(
            "outbox-failed",
            "the outbox cannot be read or written (%s)".formatted(cause.getMessage()),
            "Check the journal's disk: space left, permissions, and that it is still there."));
  }

  private static Duration shorter(Duration one, Duration other) {
    return one.compareTo(other) < 0 ? one : other;
  }
}
