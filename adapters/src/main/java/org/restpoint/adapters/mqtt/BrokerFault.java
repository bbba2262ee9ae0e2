package org.restpoint.adapters.mqtt;

/** A connection that could not be made or held, with the words for a person. */
final class BrokerFault extends Exception {

  private static final long serialVersionUID = 1L;

  private final transient BrokerTrouble trouble;

  BrokerFault(BrokerTrouble trouble) {
    super(trouble.text());
    this.trouble = trouble;
  }

  BrokerTrouble trouble() {
    return trouble;
  }
}
