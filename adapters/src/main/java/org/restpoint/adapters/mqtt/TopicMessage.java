package org.restpoint.adapters.mqtt;

import java.nio.charset.StandardCharsets;
import java.time.Instant;

/**
 * A message that was overheard.
 *
 * @param time when it came
 * @param topic its topic
 * @param payload its text, as UTF-8
 * @param retained whether the broker had kept it from an unknown time before
 */
public record TopicMessage(Instant time, String topic, String payload, boolean retained) {

  static TopicMessage of(Arrival arrival) {
    return new TopicMessage(
        arrival.time(),
        arrival.topic(),
        new String(arrival.payload(), StandardCharsets.UTF_8),
        arrival.retained());
  }
}
