package org.restpoint.adapters.journal;

/**
 * A message to be sent once it is committed.
 *
 * @param topic the whole topic
 * @param retained whether the broker keeps it as the topic's last value
 * @param payload JSON text
 */
public record OutgoingMessage(String topic, boolean retained, String payload) {}
