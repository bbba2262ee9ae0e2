package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps one client connected: a thread that connects, lets the conversation be held, and connects
 * again after a wait when the connection could not be made or was lost. A connection that did not
 * last for the longest wait does not shorten the next one, so a broker that accepts and drops at
 * once is not hammered.
 */
final class ConnectionKeeper {

  private static final Logger LOG = LoggerFactory.getLogger(ConnectionKeeper.class);

  /**
   * Between the broker's welcome and the first request: the embedded broker says welcome a fraction
   * of a millisecond before it is ready, and ends a connection that is quicker.
   */
  private static final Duration BREATH = Duration.ofMillis(20);

  private static final Duration CLOSE_LIMIT = Duration.ofMillis(1_800);

  private final BrokerAddress address;
  private final ConnectionPlan plan;
  private final ConnectionTimes times;
  private final Conversation conversation;
  private final BrokerListener listener;
  private final InstantSource clock;
  private final LongSupplier nanos;
  private final Doorbell doorbell = new Doorbell();
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Thread thread;

  private volatile BrokerHealth health = new BrokerHealth.Idle();
  private volatile @Nullable BrokerConnection current;
  private @Nullable BrokerTrouble lastTold;
  private long stoodSince;
  private boolean stood;

  ConnectionKeeper(
      BrokerAddress address,
      ConnectionPlan plan,
      ConnectionTimes times,
      Conversation conversation,
      BrokerListener listener,
      InstantSource clock,
      LongSupplier nanos) {
    this.address = address;
    this.plan = plan;
    this.times = times;
    this.conversation = conversation;
    this.listener = listener;
    this.clock = clock;
    this.nanos = nanos;
    this.thread = new Thread(this::run, "mqtt-" + plan.clientId());
    this.thread.setDaemon(true);
  }

  synchronized void start() {
    if (thread.getState() != Thread.State.NEW || isClosing()) {
      throw new IllegalStateException("started or closed before");
    }
    health = new BrokerHealth.Connecting();
    thread.start();
  }

  BrokerHealth check() {
    return isClosing() ? new BrokerHealth.Closed() : health;
  }

  Doorbell doorbell() {
    return doorbell;
  }

  boolean isClosing() {
    return closing.getCount() == 0;
  }

  /** Lets the conversation end in order, and cuts the connection when it does not within 1.8 s. */
  void close() {
    closing.countDown();
    doorbell.ring();
    boolean started;
    synchronized (this) {
      started = thread.getState() != Thread.State.NEW;
    }
    if (started && Thread.currentThread() != thread) {
      try {
        thread.join(CLOSE_LIMIT.toMillis());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
    BrokerConnection left = current;
    if (left != null) {
      left.cut();
    }
  }

  private void run() {
    BackOff backOff = times.backOff();
    while (!isClosing()) {
      attempt();
      if (stood && nanos.getAsLong() - stoodSince >= times.longestWait().toNanos()) {
        backOff = times.backOff();
      }
      pause(backOff.next());
      backOff = backOff.longer();
    }
  }

  private void attempt() {
    stood = false;
    BrokerConnection connection =
        new BrokerConnection(address, plan, times, doorbell, clock, nanos);
    current = connection;
    boolean inOrder = false;
    try {
      connection.open(arrival -> conversation.arrived(connection, arrival), this::isClosing);
      pause(BREATH);
      if (!isClosing()) {
        conversation.hold(connection, this::greeted);
        inOrder = true;
      }
    } catch (BrokerFault fault) {
      failed(fault.trouble());
    } catch (RuntimeException e) {
      LOG.error("the client {} of {} failed", plan.clientId(), address.display(), e);
      failed(
          new BrokerTrouble(
              "client-failed",
              "the client of broker %s failed (%s)".formatted(address.display(), e),
              "It starts again by itself; report this with the log."));
    } finally {
      connection.end(inOrder);
      current = null;
    }
  }

  private void greeted() {
    stood = true;
    stoodSince = nanos.getAsLong();
    lastTold = null;
    Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
    health = new BrokerHealth.Connected(now);
    tell(listener::connected);
  }

  private void failed(BrokerTrouble trouble) {
    if (isClosing()) {
      return;
    }
    health = new BrokerHealth.Refused(trouble);
    if (stood) {
      tell(() -> listener.disconnected(trouble));
    } else if (!trouble.equals(lastTold)) {
      tell(() -> listener.trouble(trouble));
    }
    lastTold = trouble;
  }

  /** Tells the listener; one that throws against its word must not end the thread. */
  void tell(Runnable report) {
    try {
      report.run();
    } catch (RuntimeException e) {
      LOG.error("a listener of the client {} failed", plan.clientId(), e);
    }
  }

  private void pause(Duration wait) {
    try {
      if (closing.await(wait.toMillis(), TimeUnit.MILLISECONDS)) {
        LOG.debug("the client {} is closing", plan.clientId());
      }
    } catch (InterruptedException e) {
      // Nobody but the end of the process interrupts this thread.
      closing.countDown();
      Thread.currentThread().interrupt();
    }
  }
}
