package org.restpoint.adapters.mqtt;

/**
 * Whom a client of the broker reports to. Called on the client's own thread; no method blocks or
 * throws.
 */
public interface BrokerListener {

  /** The broker is there, and what must be said or subscribed first has been. */
  void connected();

  /** A standing connection ended without being asked to; the client tries again by itself. */
  void disconnected(BrokerTrouble trouble);

  /**
   * An attempt failed, or something else a person should know of. A failure that stays the same is
   * told once.
   */
  void trouble(BrokerTrouble trouble);
}
