package org.restpoint.adapters.line;

/** Where one line of a device ends and the next begins. */
public sealed interface LineEnd {

  /** CR, LF or both; an empty line is nothing. */
  LineEnd CR_OR_LF = new CarriageReturnOrLineFeed();

  /** CR, LF or both. */
  record CarriageReturnOrLineFeed() implements LineEnd {}

  /**
   * A mark of its own, such as {@code ;} or ETX. Refuses, with an {@link IllegalArgumentException},
   * what is not 1 to 8 ASCII characters.
   *
   * @param characters the mark
   */
  record Mark(String characters) implements LineEnd {

    /** The longest mark, in characters: no device is known to need more. */
    public static final int LONGEST = 8;

    public Mark {
      if (characters.isEmpty()
          || characters.length() > LONGEST
          || characters.chars().anyMatch(c -> c > 0x7F)) {
        throw new IllegalArgumentException(
            "a mark at the end of a line has 1 to %d ASCII characters".formatted(LONGEST));
      }
    }
  }

  /**
   * No mark: each record has the same length, and a pause shows where one begins. Refuses, with an
   * {@link IllegalArgumentException}, a length that is not 1 to {@link
   * LineFraming#LONGEST_LINE_BYTES}.
   *
   * @param bytes how long a record is
   */
  record Width(int bytes) implements LineEnd {

    public Width {
      if (bytes < 1 || bytes > LineFraming.LONGEST_LINE_BYTES) {
        throw new IllegalArgumentException(
            "a record has 1 to %d bytes, not %d".formatted(LineFraming.LONGEST_LINE_BYTES, bytes));
      }
    }
  }
}
