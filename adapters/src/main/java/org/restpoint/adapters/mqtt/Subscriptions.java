package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.LongSupplier;

/**
 * What one connection listens to; follows the links as they come and go. Each filter is subscribed
 * to once, however many links it serves. Used by the connection's thread alone.
 */
final class Subscriptions {

  /**
   * QoS 0: with QoS 1 the embedded broker does not mark a retained message as one, and a stale
   * reading taken for a fresh one is worse than one lost with a connection, which a session that is
   * not kept would lose as well.
   */
  private static final int QUALITY = 0;

  private static final Duration ASK_AGAIN_AFTER = Duration.ofMinutes(1);

  private final BrokerConnection connection;
  private final Function<MqttLink, String> filterOf;
  private final Consumer<Runnable> teller;
  private final BooleanSupplier givenUp;
  private final LongSupplier nanos;
  private final Set<String> filters = new HashSet<>();
  private final Set<String> refused = new HashSet<>();
  private final Set<MqttLink> served = new HashSet<>();
  private long refusedAtNanos;

  /**
   * @param filterOf under which filter a link's messages come
   * @param teller tells a link something
   */
  Subscriptions(
      BrokerConnection connection,
      Function<MqttLink, String> filterOf,
      Consumer<Runnable> teller,
      BooleanSupplier givenUp,
      LongSupplier nanos) {
    this.connection = connection;
    this.filterOf = filterOf;
    this.teller = teller;
    this.givenUp = givenUp;
    this.nanos = nanos;
  }

  /** Subscribes for those that have come and ends what only those needed that have gone. */
  void follow(List<MqttLink> links) throws BrokerFault {
    if (served.size() == links.size() && served.containsAll(links)) {
      return;
    }
    if (nanos.getAsLong() - refusedAtNanos >= ASK_AGAIN_AFTER.toNanos()) {
      refused.clear();
    }
    for (MqttLink link : links) {
      if (!served.contains(link)) {
        serve(link);
      }
    }
    forgetTheClosed(links);
  }

  private void serve(MqttLink link) throws BrokerFault {
    String filter = filterOf.apply(link);
    if (!filters.contains(filter) && !refused.contains(filter)) {
      subscribe(filter);
    }
    if (refused.contains(filter)) {
      teller.accept(() -> link.lost(connection.diagnosis().subscriptionRefused(filter)));
    } else {
      served.add(link);
      teller.accept(link::subscribed);
    }
  }

  private void subscribe(String filter) throws BrokerFault {
    if (connection.subscribe(List.of(filter), QUALITY, givenUp).isEmpty()) {
      filters.add(filter);
    } else {
      refused.add(filter);
      refusedAtNanos = nanos.getAsLong();
    }
  }

  private void forgetTheClosed(List<MqttLink> links) throws BrokerFault {
    served.retainAll(links);
    for (String filter : Set.copyOf(filters)) {
      if (served.stream().noneMatch(link -> filterOf.apply(link).equals(filter))) {
        filters.remove(filter);
        connection.unsubscribe(filter);
      }
    }
  }
}
