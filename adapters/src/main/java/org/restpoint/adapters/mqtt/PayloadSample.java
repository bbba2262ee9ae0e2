package org.restpoint.adapters.mqtt;

/** The beginning of a payload, safe to show: printable ASCII as it is, anything else escaped. */
final class PayloadSample {

  private static final int MOST_BYTES = 60;

  private PayloadSample() {}

  static String of(byte[] payload) {
    StringBuilder shown = new StringBuilder();
    for (int i = 0; i < Math.min(payload.length, MOST_BYTES); i++) {
      int value = payload[i] & 0xFF;
      if (value == '\\') {
        shown.append("\\\\");
      } else if (value >= ' ' && value <= '~') {
        shown.append((char) value);
      } else {
        shown.append("\\x%02X".formatted(value));
      }
    }
    if (payload.length > MOST_BYTES) {
      shown.append("... (").append(payload.length).append(" bytes)");
    }
    return shown.toString();
  }
}
