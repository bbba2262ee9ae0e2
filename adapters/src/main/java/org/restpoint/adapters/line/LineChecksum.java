package org.restpoint.adapters.line;

import java.util.Locale;
import org.restpoint.adapters.checksum.Crc16;
import org.restpoint.adapters.checksum.Xor;

/**
 * How a line proves that it came whole. White space after the checksum does not matter; hexadecimal
 * digits are in upper or lower case, the highest first.
 */
public sealed interface LineChecksum {

  /** It does not. */
  LineChecksum NONE = new None();

  /** What becomes of a line of which the encoding is known. */
  Checked checked(String line, LineEncoding encoding);

  /** A line has no checksum. */
  record None() implements LineChecksum {
    @Override
    public Checked checked(String line, LineEncoding encoding) {
      return new Checked.Sound(line);
    }
  }

  /**
   * As NMEA 0183 has it: the exclusive or of the bytes before the last {@code *}, and two
   * hexadecimal digits after it. A {@code $} or {@code !} that begins the line, and white space
   * before it, do not count; otherwise every byte does.
   */
  record ExclusiveOr() implements LineChecksum {

    private static final int DIGITS = 2;

    @Override
    public Checked checked(String line, LineEncoding encoding) {
      String whole = LineChecksum.withoutMargins(line);
      int star = whole.length() - DIGITS - 1;
      if (star < 0 || whole.charAt(star) != '*' || !LineChecksum.isHexadecimal(whole, star + 1)) {
        return new Checked.Wrong("it does not end in * and two hexadecimal digits");
      }
      String before = whole.substring(0, star);
      String bare = before.stripLeading();
      boolean started = bare.startsWith("$") || bare.startsWith("!");
      int sum = Xor.of(encoding.bytes(started ? bare.substring(1) : before));
      return LineChecksum.compared(before, sum, whole.substring(star + 1));
    }
  }

  /**
   * A cyclic redundancy check of 16 bits over the bytes before a separator, and four hexadecimal
   * digits after it, at the end of the line. The separator is one character that is neither letter
   * nor digit.
   *
   * @param crc which
   */
  record Crc(Crc16 crc) implements LineChecksum {

    private static final int DIGITS = 4;

    @Override
    public Checked checked(String line, LineEncoding encoding) {
      String whole = LineChecksum.withoutMargins(line);
      int separator = whole.length() - DIGITS - 1;
      if (separator < 0
          || Character.isLetterOrDigit(whole.charAt(separator))
          || !LineChecksum.isHexadecimal(whole, separator + 1)) {
        return new Checked.Wrong("it does not end in a separator and four hexadecimal digits");
      }
      String before = whole.substring(0, separator);
      return LineChecksum.compared(
          before, crc.of(encoding.bytes(before)), whole.substring(separator + 1));
    }
  }

  /** What a checksum says of a line. */
  sealed interface Checked {

    /**
     * The line came whole.
     *
     * @param line without its checksum
     */
    record Sound(String line) implements Checked {}

    /**
     * It did not, as far as one can tell.
     *
     * @param reason a clause without a full stop
     */
    record Wrong(String reason) implements Checked {}
  }

  private static Checked compared(String before, int sum, String digits) {
    if (Integer.parseInt(digits, 16) == sum) {
      return new Checked.Sound(before);
    }
    String right = String.format(Locale.ROOT, "%0" + digits.length() + "X", sum);
    return new Checked.Wrong("it ends in %s, and its characters give %s".formatted(digits, right));
  }

  /** Without white space at its end, and without what a mark of two characters left before it. */
  private static String withoutMargins(String line) {
    int from = 0;
    while (from < line.length() && (line.charAt(from) == '\r' || line.charAt(from) == '\n')) {
      from++;
    }
    return line.substring(from).stripTrailing();
  }

  private static boolean isHexadecimal(String text, int from) {
    return text.chars().skip(from).allMatch(c -> c <= 0x7F && Character.digit(c, 16) >= 0);
  }
}
