package org.restpoint.adapters.mqtt;

/**
 * How the outbox is emptied. Refuses, with an {@link IllegalArgumentException}, a window or a queue
 * below 1.
 *
 * @param clientId the client's name at the broker, unique there
 * @param presence how others see whether the service is there
 * @param window how many messages may be sent and not yet acknowledged
 * @param transientQueue how many messages of QoS 0 may wait for the connection's thread
 * @param times how patient the client is
 */
public record PublisherSettings(
    String clientId, Presence presence, int window, int transientQueue, ConnectionTimes times) {

  private static final int USUAL_WINDOW = 64;
  private static final int USUAL_TRANSIENT_QUEUE = 1_024;

  public PublisherSettings {
    if (window < 1 || transientQueue < 1) {
      throw new IllegalArgumentException(
          "window and queue are 1 or above, found %d and %d".formatted(window, transientQueue));
    }
  }

  /** A window of 64, 1,024 transient messages, the usual times. */
  public static PublisherSettings usual(String clientId, Presence presence) {
    return new PublisherSettings(
        clientId, presence, USUAL_WINDOW, USUAL_TRANSIENT_QUEUE, ConnectionTimes.usual());
  }
}
