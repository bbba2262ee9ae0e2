package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.time.InstantSource;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.LinkListener;

/**
 * The one connection over which all probes of a station that send by MQTT are heard. It is opened
 * with the first link that is started, and subscribes to each topic once, however many links read
 * it. Several links may read one topic, each with pointers of its own.
 */
public final class MqttReadings implements AutoCloseable {

  /**
   * QoS 0: with QoS 1 the embedded broker does not mark a retained message as one, and a stale
   * reading taken for a fresh one is worse than one lost with a connection, which a session that is
   * not kept would lose as well.
   */
  private static final int QUALITY = 0;

  private static final int MOST_WAITING = 4_096;
  private static final int MOST_IN_FLIGHT = 8;
  private static final Duration TICK = Duration.ofSeconds(1);
  private static final Duration ONE_MINUTE = Duration.ofMinutes(1);

  private final LongSupplier nanos;
  private final ConnectionKeeper keeper;
  private final List<MqttLink> links = new CopyOnWriteArrayList<>();
  private final BlockingQueue<Arrival> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
  private boolean started;

  /**
   * Prepares the connection.
   *
   * @param broker where the readings come from
   * @param clientId the client's name at the broker, unique there
   * @param times how patient the client is
   * @param clock stamps each message as it comes
   * @param nanos a clock that only runs forward, in nanoseconds
   */
  public MqttReadings(
      BrokerAddress broker,
      String clientId,
      ConnectionTimes times,
      InstantSource clock,
      LongSupplier nanos) {
    this.nanos = nanos;
    ConnectionPlan plan =
        new ConnectionPlan(clientId, true, false, Optional.empty(), MOST_IN_FLIGHT);
    this.keeper =
        new ConnectionKeeper(broker, plan, times, new Hearing(), new ToLinks(), clock, nanos);
  }

  /** Prepares a link; it opens nothing before its start. */
  public MqttLink link(MqttLinkSettings settings, LinkListener listener) {
    return new MqttLink(this, settings, listener, nanos);
  }

  /** How the connection is now. Never blocks. */
  public BrokerHealth check() {
    return keeper.check();
  }

  /** Disconnects, within 2 s, and closes every link. Idempotent. */
  @Override
  public void close() {
    keeper.close();
    links.forEach(MqttLink::close);
  }

  synchronized void add(MqttLink link) {
    links.add(link);
    if (started) {
      keeper.doorbell().ring();
    } else {
      started = true;
      keeper.start();
    }
  }

  void remove(MqttLink link) {
    links.remove(link);
    keeper.doorbell().ring();
  }

  private final class Hearing implements Conversation {

    @Override
    public void hold(BrokerConnection connection, Runnable greeted) throws BrokerFault {
      waiting.clear();
      Subscriptions subscriptions = new Subscriptions(connection);
      subscriptions.follow();
      greeted.run();
      while (!keeper.isClosing()) {
        connection.requireAlive();
        subscriptions.follow();
        @Nullable Arrival next = waiting.poll();
        if (next == null) {
          keeper.doorbell().await(untilTheNextLook());
        } else {
          hand(next);
        }
      }
    }

    @Override
    public void arrived(BrokerConnection from, Arrival arrival) {
      if (!waiting.offer(arrival)) {
        links.stream()
            .filter(link -> link.topic().equals(arrival.topic()))
            .forEach(MqttLink::dropped);
      }
    }
  }

  private void hand(Arrival arrival) {
    for (MqttLink link : links) {
      if (link.topic().equals(arrival.topic())) {
        keeper.tell(() -> link.take(arrival));
      }
    }
    untilTheNextLook();
  }

  private Duration untilTheNextLook() {
    Duration next = TICK;
    for (MqttLink link : links) {
      Duration left = link.watch();
      next = left.compareTo(next) < 0 ? left : next;
    }
    return next;
  }

  /** Which topics this connection listens to; follows the links as they come and go. */
  private final class Subscriptions {

    private final BrokerConnection connection;
    private final Set<String> topics = new HashSet<>();
    private final Set<String> refused = new HashSet<>();
    private final Set<MqttLink> served = new HashSet<>();
    private long refusedAtNanos;

    Subscriptions(BrokerConnection connection) {
      this.connection = connection;
    }

    void follow() throws BrokerFault {
      if (served.size() == links.size() && served.containsAll(links)) {
        return;
      }
      if (nanos.getAsLong() - refusedAtNanos >= ONE_MINUTE.toNanos()) {
        refused.clear();
      }
      for (MqttLink link : links) {
        if (!served.contains(link)) {
          serve(link);
        }
      }
      forgetTheClosed();
    }

    private void serve(MqttLink link) throws BrokerFault {
      if (!topics.contains(link.topic()) && !refused.contains(link.topic())) {
        subscribe(link.topic());
      }
      if (refused.contains(link.topic())) {
        keeper.tell(() -> link.lost(connection.diagnosis().subscriptionRefused(link.topic())));
      } else {
        served.add(link);
        keeper.tell(link::subscribed);
      }
    }

    private void subscribe(String topic) throws BrokerFault {
      if (connection.subscribe(List.of(topic), QUALITY, keeper::isClosing).isEmpty()) {
        topics.add(topic);
      } else {
        refused.add(topic);
        refusedAtNanos = nanos.getAsLong();
      }
    }

    private void forgetTheClosed() throws BrokerFault {
      served.retainAll(links);
      for (String topic : Set.copyOf(topics)) {
        if (served.stream().noneMatch(link -> link.topic().equals(topic))) {
          topics.remove(topic);
          connection.unsubscribe(topic);
        }
      }
    }
  }

  /** What happens to the connection happens to every link. */
  private final class ToLinks implements BrokerListener {

    @Override
    public void connected() {
      // Each link hears of its own subscription.
    }

    @Override
    public void disconnected(BrokerTrouble trouble) {
      links.forEach(link -> link.lost(trouble));
    }

    @Override
    public void trouble(BrokerTrouble trouble) {
      links.forEach(link -> link.lost(trouble));
    }
  }
}
