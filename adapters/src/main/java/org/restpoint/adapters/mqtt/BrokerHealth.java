package org.restpoint.adapters.mqtt;

import java.time.Instant;

/** How a client of the broker is now. */
public sealed interface BrokerHealth {

  /** Built, not started. */
  record Idle() implements BrokerHealth {}

  /** The first attempt is under way. */
  record Connecting() implements BrokerHealth {}

  /**
   * Connected and, where it listens, subscribed.
   *
   * @param since when the connection was made
   */
  record Connected(Instant since) implements BrokerHealth {}

  /**
   * Not connected; it tries again by itself.
   *
   * @param trouble why the last attempt or connection failed
   */
  record Refused(BrokerTrouble trouble) implements BrokerHealth {}

  /** Closed. */
  record Closed() implements BrokerHealth {}
}
