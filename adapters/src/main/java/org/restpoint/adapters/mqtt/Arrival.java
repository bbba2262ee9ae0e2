package org.restpoint.adapters.mqtt;

import java.time.Instant;

/**
 * A message as it came from the broker.
 *
 * @param time when it came
 * @param topic its topic
 * @param payload its bytes
 * @param retained whether it was kept by the broker from an unknown time before
 * @param duplicate whether the broker has sent it before
 * @param id the broker's number for it on this connection
 * @param qos its quality of service
 */
@SuppressWarnings("ArrayRecordComponent") // never compared; the bytes are handed on once
record Arrival(
    Instant time,
    String topic,
    byte[] payload,
    boolean retained,
    boolean duplicate,
    int id,
    int qos) {}
