package org.restpoint.adapters.text;

import java.nio.charset.StandardCharsets;

/** A piece of what a device sent, fit to be shown to a person and to stand in a log. */
public final class Excerpt {

  /** The most characters shown. */
  public static final int LONGEST = 80;

  private Excerpt() {}

  /**
   * The text with backslashes and everything that is not printable ASCII escaped, cut to {@link
   * #LONGEST} characters; what was cut shows as {@code ...} within them.
   */
  public static String of(String text) {
    StringBuilder shown = new StringBuilder();
    int fits = 0;
    for (int i = 0; i < text.length(); i++) {
      shown.append(escaped(text.charAt(i)));
      if (shown.length() <= LONGEST - 3) {
        fits = shown.length();
      }
      if (shown.length() > LONGEST) {
        return shown.substring(0, fits) + "...";
      }
    }
    return shown.toString();
  }

  /** The same of bytes, each of them one character (ISO 8859-1). */
  public static String of(byte[] bytes) {
    int enough = Math.min(bytes.length, LONGEST + 1);
    return of(new String(bytes, 0, enough, StandardCharsets.ISO_8859_1));
  }

  private static String escaped(char c) {
    if (c == '\\') {
      return "\\\\";
    }
    if (c >= ' ' && c <= '~') {
      return String.valueOf(c);
    }
    return c <= 0xFF ? "\\x%02X".formatted((int) c) : "\\u%04X".formatted((int) c);
  }
}
