package org.restpoint.adapters.mqtt;

import java.nio.charset.StandardCharsets;

/**
 * A message of the instruction inbox.
 *
 * @param topic the topic it came on
 * @param payload its bytes, at most 64 KiB, not checked in any way
 * @param retained whether the broker had kept it from an unknown time before, as far as the broker
 *     says so: the embedded one never does
 * @param duplicate whether the broker says that it has sent it before; one that comes again after a
 *     lost connection may not be marked, so tell duplicates by the caller's {@code id}
 * @param acknowledge to be run, from any thread, when the message is in safe hands: only then the
 *     broker forgets it. Running it twice is harmless; a message whose connection is gone comes
 *     again
 */
@SuppressWarnings("ArrayRecordComponent") // never compared; the bytes are handed on once
public record Instruction(
    String topic, byte[] payload, boolean retained, boolean duplicate, Runnable acknowledge) {

  /** The payload read as UTF-8; what is not UTF-8 becomes U+FFFD. */
  public String text() {
    return new String(payload, StandardCharsets.UTF_8);
  }
}
