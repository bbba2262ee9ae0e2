package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.LinkListener;

/**
 * The one connection over which all probes of a station that send by MQTT are heard. It is opened
 * with the first link that is started, and subscribes to each topic once, however many links read
 * it. Several links may read one topic, each with pointers of its own, and a topic with a captured
 * level brings the messages of many.
 *
 * <p>All links are to be prepared before the first is started: a link whose topic another one's
 * filter covers is served by that filter, because a broker may send a message once for each
 * subscription that it fits. Filters that cross, such as {@code a/+/c} and {@code a/b/+}, are for
 * the caller to keep apart.
 */
public final class MqttReadings implements AutoCloseable {

  private static final int MOST_WAITING = 4_096;
  private static final int MOST_IN_FLIGHT = 8;
  private static final Duration TICK = Duration.ofSeconds(1);

  private final LongSupplier nanos;
  private final ConnectionKeeper keeper;
  private final List<MqttLink> prepared = new CopyOnWriteArrayList<>();
  private final List<MqttLink> links = new CopyOnWriteArrayList<>();
  private final Map<TopicFilter, Unclaimed> unclaimed = new ConcurrentHashMap<>();
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
    MqttLink link = new MqttLink(this, settings, listener, nanos);
    prepared.add(link);
    if (link.filter().captures()) {
      unclaimed.computeIfAbsent(link.filter(), Unclaimed::new);
    }
    return link;
  }

  /** How the connection is now. Never blocks. */
  public BrokerHealth check() {
    return keeper.check();
  }

  /** How many messages came on a topic with a captured level under a name that no link has. */
  public long unclaimed() {
    return unclaimed.values().stream().mapToLong(Unclaimed::count).sum();
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

  /** The filter under which a link's messages come: its own, or one that covers its topic. */
  private String filterOf(MqttLink link) {
    return link.filter().captures()
        ? link.filter().text()
        : unclaimed.keySet().stream()
            .filter(filter -> filter.capturedFrom(link.topic()).isPresent())
            .map(TopicFilter::text)
            .sorted()
            .findFirst()
            .orElse(link.topic());
  }

  private final class Hearing implements Conversation {

    @Override
    public void hold(BrokerConnection connection, Runnable greeted) throws BrokerFault {
      waiting.clear();
      Subscriptions subscriptions =
          new Subscriptions(
              connection, MqttReadings.this::filterOf, keeper::tell, keeper::isClosing, nanos);
      subscriptions.follow(links);
      greeted.run();
      while (!keeper.isClosing()) {
        connection.requireAlive();
        subscriptions.follow(links);
        @Nullable Arrival next = waiting.poll();
        if (next == null) {
          keeper.doorbell().await(untilTheNextLook());
        } else {
          hand(next);
        }
      }
    }

    /** What nobody claims takes no room from what somebody does. */
    @Override
    public void arrived(BrokerConnection from, Arrival arrival) {
      String topic = arrival.topic();
      if (prepared.stream().noneMatch(link -> link.topic().equals(topic))) {
        unclaimed.forEach((filter, count) -> filter.capturedFrom(topic).ifPresent(count::happened));
      } else if (!waiting.offer(arrival)) {
        links.stream().filter(link -> link.topic().equals(topic)).forEach(MqttLink::dropped);
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
    unclaimed.forEach(this::tellUnclaimed);
    return next;
  }

  /** By one of the links that it might have been meant for. */
  private void tellUnclaimed(TopicFilter filter, Unclaimed count) {
    links.stream()
        .filter(link -> link.filter().equals(filter))
        .findFirst()
        .ifPresent(
            link -> count.due(nanos.getAsLong()).ifPresent(it -> keeper.tell(() -> link.tell(it))));
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
