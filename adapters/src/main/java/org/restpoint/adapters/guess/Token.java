package org.restpoint.adapters.guess;

/**
 * A piece of a line.
 *
 * @param kind what it is
 * @param gap the white space before it
 * @param text itself
 */
record Token(Kind kind, String gap, String text) {

  /** What a piece of a line is. */
  enum Kind {
    /** A number. */
    NUMBER,
    /** Letters. */
    WORD,
    /** A date, a time of day or both. */
    STAMP,
    /** One other character. */
    MARK
  }

  /** What it looks like, whatever it says. */
  String looks() {
    return switch (kind) {
      case NUMBER -> "0";
      case WORD -> "a";
      case STAMP -> "t";
      case MARK -> text;
    };
  }
}
