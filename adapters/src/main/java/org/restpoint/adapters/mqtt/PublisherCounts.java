package org.restpoint.adapters.mqtt;

/**
 * What a publisher has done since it was started: {@code published = acknowledged + inFlight +
 * unanswered}.
 *
 * @param published messages of QoS 1 sent, each sending counted
 * @param acknowledged those that the broker has acknowledged
 * @param inFlight those under way now, never above the window
 * @param unanswered those whose connection ended first; they are sent again
 * @param transientSent messages of QoS 0 handed to the network
 * @param transientDropped messages of QoS 0 given up: no connection, or the queue was full
 */
public record PublisherCounts(
    long published,
    long acknowledged,
    int inFlight,
    long unanswered,
    long transientSent,
    long transientDropped) {

  public PublisherCounts {
    if (published != acknowledged + inFlight + unanswered) {
      throw new IllegalArgumentException(
          "published %d is not acknowledged %d + in flight %d + unanswered %d"
              .formatted(published, acknowledged, inFlight, unanswered));
    }
  }
}
