package org.restpoint.adapters.mqtt;

/** A message that is not a reading; the message says why, in the middle of a sentence. */
public final class RejectedMessageException extends Exception {

  private static final long serialVersionUID = 1L;

  RejectedMessageException(String reason) {
    super(reason);
  }
}
