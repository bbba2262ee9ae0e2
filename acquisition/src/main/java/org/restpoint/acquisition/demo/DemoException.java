package org.restpoint.acquisition.demo;

/** The demo cannot start or cannot go on; the message is for the person who started it. */
public final class DemoException extends RuntimeException {

  private static final long serialVersionUID = 1;

  private final boolean begun;

  private DemoException(boolean begun, String message) {
    super(message);
    this.begun = begun;
  }

  static DemoException notStarted(String message) {
    return new DemoException(false, message);
  }

  static DemoException brokenOff(String message) {
    return new DemoException(true, message);
  }

  /** Whether it had started when this happened. */
  public boolean begun() {
    return begun;
  }
}
