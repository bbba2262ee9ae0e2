package org.restpoint.adapters.mqtt;

import java.time.Duration;

/**
 * How one probe's readings come in by MQTT. Refuses, with an {@link IllegalArgumentException}, a
 * name that cannot stand at a level of a topic, and a span that is not above zero.
 *
 * @param filter what is listened to
 * @param captured what stands at the captured level of this probe's messages; without such a level
 *     of no consequence
 * @param format how a payload is read
 * @param timeWithin how far a time in the payload may be off from the clock, either way
 * @param noDataAfter silence longer than this is told
 */
public record MqttLinkSettings(
    TopicFilter filter,
    String captured,
    MqttReadingFormat format,
    Duration timeWithin,
    Duration noDataAfter) {

  /**
   * How far a time in a payload may be off where nothing else is said: clocks that nobody sets
   * drift by seconds a day, and a message may wait minutes for a connection. Our choice.
   */
  public static final Duration USUAL_TIME_WITHIN = Duration.ofMinutes(5);

  public MqttLinkSettings {
    if (captured.chars().anyMatch(c -> c == '/' || c == '+' || c == '#')) {
      throw new IllegalArgumentException("expected one level of a topic, found " + captured);
    }
    requirePositive(timeWithin);
    requirePositive(noDataAfter);
  }

  /** One topic, no times in the payload. */
  public static MqttLinkSettings of(String topic, MqttReadingFormat format, Duration noDataAfter) {
    return new MqttLinkSettings(new TopicFilter(topic), "", format, USUAL_TIME_WITHIN, noDataAfter);
  }

  private static void requirePositive(Duration span) {
    if (span.isZero() || span.isNegative()) {
      throw new IllegalArgumentException("expected a span above zero, found " + span);
    }
  }

  /** The topic of this probe's messages. */
  public String topic() {
    return filter.topic(captured);
  }
}
