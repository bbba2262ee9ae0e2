package org.restpoint.adapters.modbus;

import java.util.Arrays;
import java.util.HexFormat;

/** The bytes that came after an ask: the latest {@value #MOST_BYTES} of them. */
final class Heard {

  /** Twice the longest frame there is, so that one is always whole in it. */
  static final int MOST_BYTES = 2 * 260;

  private static final int SHOWN_BYTES = 16;

  private final byte[] bytes = new byte[MOST_BYTES];
  private int length;
  private long total;

  void add(byte[] more, int count) {
    total += count;
    int kept = Math.min(count, MOST_BYTES);
    int over = Math.max(0, length + kept - MOST_BYTES);
    System.arraycopy(bytes, over, bytes, 0, length - over);
    length -= over;
    System.arraycopy(more, count - kept, bytes, length, kept);
    length += kept;
  }

  /** The bytes; those from {@link #length()} on are of no meaning. */
  byte[] bytes() {
    return bytes;
  }

  int length() {
    return length;
  }

  /** Whether exactly this has come. */
  boolean is(byte[] other) {
    return Arrays.equals(bytes, 0, length, other, 0, other.length);
  }

  /** How many have come and how they begin, for messages. */
  String text() {
    int shown = Math.min(length, SHOWN_BYTES);
    return "%d %s: %s%s"
        .formatted(
            total,
            total == 1 ? "byte" : "bytes",
            HexFormat.ofDelimiter(" ").withUpperCase().formatHex(bytes, 0, shown),
            total > shown ? " …" : "");
  }
}
