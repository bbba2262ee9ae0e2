package org.restpoint.adapters.mqtt;

/**
 * How others see whether the service is there: a retained message that the service sends itself and
 * that the broker replaces (the will) when the service is gone without a word.
 *
 * @param topic the whole topic
 * @param here what is retained while the service is connected
 * @param gone what is retained otherwise
 */
public record Presence(String topic, String here, String gone) {

  /** {@code true} and {@code false} on a topic. */
  public static Presence of(String topic) {
    return new Presence(topic, "true", "false");
  }
}
