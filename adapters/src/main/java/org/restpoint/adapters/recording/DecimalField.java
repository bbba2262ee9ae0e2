package org.restpoint.adapters.recording;

/**
 * Reads a decimal number, with or without exponent, straight from the characters of a file: the
 * value is the one {@link Double#parseDouble} gives.
 *
 * <p>Method: up to 2⁵³ a whole number is exact as a double, and so are the powers of ten up to
 * 10²²; one multiplication or division of the two is rounded once, as it should be. Everything
 * longer goes the slow way. Reference: W. D. Clinger, How to read floating point numbers
 * accurately, PLDI 1990, DOI 10.1145/93542.93557.
 */
final class DecimalField {

  private static final double[] POWERS_OF_TEN = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22
  };

  private static final long EXACT_WHOLE_NUMBERS = 1L << 53;

  /** As many digits as a long takes in any case. */
  private static final int DIGITS_IN_A_LONG = 18;

  /** Beyond this an exponent only makes 0 or infinity; {@link Double#parseDouble} does the rest. */
  private static final int LARGEST_EXPONENT = 9_999;

  private final char decimalMark;
  private double value;

  /** Numbers with this character before their decimals. */
  DecimalField(char decimalMark) {
    this.decimalMark = decimalMark;
  }

  /** The number read last. */
  double value() {
    return value;
  }

  /** Reads the characters from one place up to another; false when they are not a number. */
  boolean read(char[] text, int from, int to) {
    int at = from;
    boolean negative = at < to && text[at] == '-';
    if (at < to && (text[at] == '-' || text[at] == '+')) {
      at++;
    }
    long digits = 0;
    int count = 0;
    int seen = 0;
    int scale = 0;
    boolean point = false;
    for (; at < to; at++) {
      char c = text[at];
      if (c >= '0' && c <= '9') {
        seen++;
        digits = digits * 10 + (c - '0');
        count += digits == 0 ? 0 : 1;
        scale -= point ? 1 : 0;
        if (count > DIGITS_IN_A_LONG) {
          return readSlowly(text, from, to);
        }
      } else if (c == decimalMark && !point) {
        point = true;
      } else {
        break;
      }
    }
    if (seen == 0) {
      return false;
    }
    if (at < to) {
      int exponent = exponent(text, at, to);
      if (exponent == Integer.MIN_VALUE) {
        return false;
      }
      scale += exponent;
    }
    if (digits > EXACT_WHOLE_NUMBERS || Math.abs(scale) >= POWERS_OF_TEN.length) {
      return readSlowly(text, from, to);
    }
    double exact = scale < 0 ? digits / POWERS_OF_TEN[-scale] : digits * POWERS_OF_TEN[scale];
    value = negative ? -exact : exact;
    return true;
  }

  /** The exponent from its letter on; the smallest integer when it is not one. */
  private static int exponent(char[] text, int from, int to) {
    int at = from;
    if (text[at] != 'e' && text[at] != 'E') {
      return Integer.MIN_VALUE;
    }
    at++;
    boolean negative = at < to && text[at] == '-';
    if (at < to && (text[at] == '-' || text[at] == '+')) {
      at++;
    }
    if (at == to) {
      return Integer.MIN_VALUE;
    }
    int exponent = 0;
    for (; at < to; at++) {
      if (text[at] < '0' || text[at] > '9') {
        return Integer.MIN_VALUE;
      }
      exponent = Math.min(exponent * 10 + (text[at] - '0'), LARGEST_EXPONENT);
    }
    return negative ? -exponent : exponent;
  }

  /** The rest of the grammar is checked here, since Java also reads "1d", "0x1p3" and "NaN". */
  private boolean readSlowly(char[] text, int from, int to) {
    for (int i = from; i < to; i++) {
      char c = text[i];
      if ((c < '0' || c > '9')
          && c != decimalMark
          && c != '-'
          && c != '+'
          && c != 'e'
          && c != 'E') {
        return false;
      }
    }
    try {
      value = Double.parseDouble(new String(text, from, to - from).replace(decimalMark, '.'));
      return true;
    } catch (NumberFormatException e) {
      // Two points, an exponent without digits and the like: not a number, as the caller is told.
      return false;
    }
  }
}
