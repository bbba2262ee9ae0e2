package org.restpoint.adapters.mqtt;

/** The broker could not be reached or did not do what was asked; the message is for a person. */
public final class BrokerException extends Exception {

  private static final long serialVersionUID = 1L;

  BrokerException(BrokerTrouble trouble) {
    super(trouble.text() + ". " + trouble.remedy());
  }
}
