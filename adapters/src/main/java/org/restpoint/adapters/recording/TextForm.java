package org.restpoint.adapters.recording;

import java.util.Optional;

/**
 * How the text of a recording is written. Values may stand in double quotation marks.
 *
 * @param delimiter what stands between two values
 * @param decimalMark what stands before the decimals of a number
 * @param encoding how its letters are kept; a byte order mark at the beginning of the file wins
 * @param comment what a line begins with that is passed over; empty where there are none
 */
public record TextForm(
    Delimiter delimiter, DecimalMark decimalMark, Encoding encoding, Optional<Character> comment) {

  /** As the service itself writes: commas, decimal points, UTF-8, no comments. */
  public static final TextForm NATIVE =
      new TextForm(Delimiter.COMMA, DecimalMark.POINT, Encoding.UTF_8, Optional.empty());

  /** What may begin a comment. */
  public static final String COMMENT_MARKS = "#%!/*'>";

  /** Refuses, with an {@link IllegalArgumentException}, another mark of a comment. */
  public TextForm {
    if (comment.filter(mark -> COMMENT_MARKS.indexOf(mark) < 0).isPresent()) {
      throw new IllegalArgumentException(
          "a comment begins with one of %s, not %s".formatted(COMMENT_MARKS, comment.get()));
    }
  }

  /** What stands between two values. */
  public enum Delimiter {
    /** A comma. */
    COMMA(','),
    /** A semicolon. */
    SEMICOLON(';'),
    /** A tab. */
    TAB('\t');

    private final char character;

    Delimiter(char character) {
      this.character = character;
    }

    /** The character itself. */
    public char character() {
      return character;
    }
  }

  /** What stands before the decimals of a number. */
  public enum DecimalMark {
    /** A point. */
    POINT('.'),
    /** A comma. */
    COMMA(',');

    private final char character;

    DecimalMark(char character) {
      this.character = character;
    }

    /** The character itself. */
    public char character() {
      return character;
    }
  }
}
