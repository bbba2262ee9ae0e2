package org.restpoint.acquisition.service;

/** The service could not start; the message is for the person who started it. */
public final class ServiceException extends RuntimeException {

  private static final long serialVersionUID = 1;

  /** With words for the person. */
  public ServiceException(String message) {
    super(message);
  }
}
