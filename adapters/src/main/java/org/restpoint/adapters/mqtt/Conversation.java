package org.restpoint.adapters.mqtt;

/** What one kind of client says and hears on its connections, one after the other. */
interface Conversation {

  /**
   * Talks on the client's own thread until the client is closing; then says what is to be said last
   * and returns.
   *
   * @param greeted to be run once, when what must come first has been said and answered
   * @throws BrokerFault when the connection was lost, or is to be dropped and made anew
   */
  void hold(BrokerConnection connection, Runnable greeted) throws BrokerFault;

  /**
   * Takes a message on a thread of the MQTT library: only puts it aside, never blocks or throws.
   */
  void arrived(BrokerConnection from, Arrival arrival);
}
