package org.restpoint.adapters.outbox;

/**
 * A message kept until a broker has acknowledged it (QoS 1).
 *
 * @param sequence its place in the order of sending, 1 or above
 * @param topic the whole topic
 * @param retained whether the broker keeps it as the topic's last value
 * @param payload JSON text
 */
public record OutboxMessage(long sequence, String topic, boolean retained, String payload) {}
