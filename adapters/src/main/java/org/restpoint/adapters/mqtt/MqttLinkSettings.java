package org.restpoint.adapters.mqtt;

import java.time.Duration;

/**
 * How one probe's readings come in by MQTT. Refuses, with an {@link IllegalArgumentException}, an
 * empty topic, one with a wildcard (whose readings would they be?) and a span that is not above
 * zero.
 *
 * @param topic the topic, no wildcards
 * @param format how a payload is read
 * @param noDataAfter silence longer than this is told
 */
public record MqttLinkSettings(String topic, MqttReadingFormat format, Duration noDataAfter) {

  public MqttLinkSettings {
    if (topic.isEmpty() || topic.indexOf('+') >= 0 || topic.indexOf('#') >= 0) {
      throw new IllegalArgumentException("expected a topic without wildcards, found " + topic);
    }
    if (noDataAfter.isZero() || noDataAfter.isNegative()) {
      throw new IllegalArgumentException("expected a span above zero, found " + noDataAfter);
    }
  }
}
