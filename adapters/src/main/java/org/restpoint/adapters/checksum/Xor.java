package org.restpoint.adapters.checksum;

import java.util.Objects;

/**
 * The exclusive or of bytes: {@code b₁ ⊕ b₂ ⊕ … ⊕ bₙ}, 0 to 0xFF; that of no bytes is 0. It misses
 * two errors in the same bit, and bytes that changed places.
 *
 * <p>Reference: NMEA 0183, Standard for interfacing marine electronic devices, the field after the
 * {@code *} of a sentence.
 */
public final class Xor {

  private Xor() {}

  /** That of all the bytes. */
  public static int of(byte[] bytes) {
    return of(bytes, 0, bytes.length);
  }

  /**
   * That of the bytes from one place up to, but without, another.
   *
   * @throws IndexOutOfBoundsException when they do not lie in the array
   */
  public static int of(byte[] bytes, int from, int to) {
    Objects.checkFromToIndex(from, to, bytes.length);
    int register = 0;
    for (int i = from; i < to; i++) {
      register ^= bytes[i];
    }
    return register & 0xFF;
  }
}
