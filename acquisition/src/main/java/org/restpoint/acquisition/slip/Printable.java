package org.restpoint.acquisition.slip;

/** Text that does nothing but be read. */
final class Printable {

  private static final int REPLACEMENT = 0xfffd;

  private Printable() {}

  /**
   * The text in one line, without space at its ends. White space of any kind is one space; control
   * characters, lone surrogates and marks that turn the reading direction are U+FFFD.
   */
  static String of(String text) {
    StringBuilder printable = new StringBuilder(text.length());
    text.strip()
        .replaceAll("[\\s\\x0B\\x85\\u2028\\u2029]+", " ")
        .codePoints()
        .map(point -> isHarmless(point) ? point : REPLACEMENT)
        .forEach(printable::appendCodePoint);
    return printable.toString();
  }

  private static boolean isHarmless(int point) {
    int type = Character.getType(point);
    boolean turnsDirection =
        (point >= 0x202a && point <= 0x202e) || (point >= 0x2066 && point <= 0x2069);
    return type != Character.CONTROL
        && type != Character.SURROGATE
        && (point & 0xfffe) != 0xfffe
        && !turnsDirection;
  }
}
