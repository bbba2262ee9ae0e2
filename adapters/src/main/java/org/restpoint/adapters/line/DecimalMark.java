package org.restpoint.adapters.line;

import java.util.OptionalDouble;
import org.restpoint.adapters.text.DecimalNumber;

/** What stands before the decimals of a number. */
public enum DecimalMark {
  /** A point; a comma makes it no number. */
  POINT('.', ','),
  /** A comma; a point makes it no number. */
  COMMA(',', '.');

  private final char mark;
  private final char other;

  DecimalMark(char mark, char other) {
    this.mark = mark;
    this.other = other;
  }

  /**
   * The number that a text is; empty where it is none. White space around it, and between its sign
   * and its digits, does not matter: a meter that writes columns puts the sign at their edge.
   */
  OptionalDouble number(String text) {
    String bare = text.strip();
    if (bare.indexOf(other) >= 0) {
      return OptionalDouble.empty();
    }
    String sign = bare.startsWith("-") || bare.startsWith("+") ? bare.substring(0, 1) : "";
    String digits = bare.substring(sign.length()).stripLeading();
    boolean signed = digits.startsWith("-") || digits.startsWith("+");
    return signed ? OptionalDouble.empty() : DecimalNumber.in(sign + digits.replace(mark, '.'));
  }

  /** What to tell of a text that is no number and might be one with the other mark. */
  String hint(String text) {
    boolean swapped = text.indexOf(other) >= 0;
    return swapped ? ": a decimal " + (mark == ',' ? "comma" : "point") + " is expected" : "";
  }
}
