package org.restpoint.config.station;

import java.util.List;
import java.util.Optional;

/**
 * How a recording is written that is not in the service's own form.
 *
 * @param delimiter what stands between two values
 * @param decimalComma whether a comma stands before the decimals of a number, instead of a point
 * @param encoding how its letters are kept
 * @param comment what a line begins with that is passed over; empty where there are none
 * @param header whether its first row says what the columns are
 * @param columns which columns are read
 * @param numbers what the numbers in them are
 * @param time how its times are written
 * @param missing texts that stand for no value
 */
public record RecordingLayout(
    Delimiter delimiter,
    boolean decimalComma,
    Encoding encoding,
    Optional<Character> comment,
    boolean header,
    RecordingColumns columns,
    Numbers numbers,
    RecordingTime time,
    List<String> missing) {

  /** What stands between two values. */
  public enum Delimiter {
    /** A comma. */
    COMMA,
    /** A semicolon. */
    SEMICOLON,
    /** A tab. */
    TAB
  }

  /** How letters are kept in a file. */
  public enum Encoding {
    /** UTF-8. */
    UTF_8,
    /** UTF-16. */
    UTF_16,
    /** ISO 8859-1. */
    LATIN_1
  }
}
