package org.restpoint.config.file;

import java.util.List;

/** How values of a file are shown in a message. */
final class Wording {

  private static final int LONGEST_SHOWN = 60;

  private Wording() {}

  /**
   * The text, shortened, and with control characters spelled out so that no terminal obeys them.
   */
  static String shown(String text) {
    StringBuilder shown = new StringBuilder();
    int[] codePoints = text.codePoints().limit(LONGEST_SHOWN + 1L).toArray();
    for (int i = 0; i < Math.min(codePoints.length, LONGEST_SHOWN); i++) {
      int c = codePoints[i];
      if (isUnseen(c)) {
        shown.append(String.format("\\u%04x", c));
      } else {
        shown.appendCodePoint(c);
      }
    }
    if (codePoints.length > LONGEST_SHOWN) {
      shown.append('…');
    }
    return shown.toString();
  }

  /** The words in a row: {@code a}, {@code a and b}, {@code a, b and c}. */
  static String row(List<String> words, String last) {
    int n = words.size();
    if (n < 2) {
      return String.join("", words);
    }
    return String.join(", ", words.subList(0, n - 1)) + " " + last + " " + words.get(n - 1);
  }

  private static boolean isUnseen(int c) {
    int type = Character.getType(c);
    return type == Character.CONTROL
        || type == Character.FORMAT
        || type == Character.SURROGATE
        || type == Character.LINE_SEPARATOR
        || type == Character.PARAGRAPH_SEPARATOR;
  }
}
