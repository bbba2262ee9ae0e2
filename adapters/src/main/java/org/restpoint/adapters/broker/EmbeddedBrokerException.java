package org.restpoint.adapters.broker;

/**
 * The broker inside the service could not be started; the message says to a person why and what to
 * do.
 */
public final class EmbeddedBrokerException extends Exception {

  private static final long serialVersionUID = 1L;

  EmbeddedBrokerException(String message, Throwable cause) {
    super(message, cause);
  }
}
