package org.restpoint.adapters.sdi12;

/**
 * What a sensor is asked to measure. Refuses, with an {@link IllegalArgumentException}, another
 * number than 0 to 9.
 *
 * @param kind how it is asked
 * @param number which of its measurements; 0 is the first one
 * @param checked whether values come with a cyclic redundancy check (section 4.4.12)
 */
public record Measurement(Kind kind, int number, boolean checked) {

  /** The largest number of a measurement. */
  public static final int MOST = 9;

  /** How a measurement is asked for. */
  public enum Kind {
    /** {@code aM!}: the bus belongs to the sensor until it is done (section 4.4.5). */
    ALONE('M', 1, 35),
    /** {@code aC!}: other sensors may be asked while it measures (section 4.4.7). */
    CONCURRENT('C', 2, 75),
    /** {@code aR0!}: it measures all the time and answers with values at once (Table 5). */
    CONTINUOUS('R', 0, 75);

    private final char letter;
    private final int countDigits;
    private final int mostCharacters;

    Kind(char letter, int countDigits, int mostCharacters) {
      this.letter = letter;
      this.countDigits = countDigits;
      this.mostCharacters = mostCharacters;
    }

    char letter() {
      return letter;
    }

    /** How many digits tell the number of values (Tables 9 and 10); 0 where none is told. */
    int countDigits() {
      return countDigits;
    }

    /** The most characters that the values of one answer have, the check not counted. */
    int mostCharacters() {
      return mostCharacters;
    }
  }

  public Measurement {
    if (number < 0 || number > MOST) {
      throw new IllegalArgumentException("measurement %d is not 0 to %d".formatted(number, MOST));
    }
  }

  /**
   * What stands between the address and the exclamation mark: {@code M}, {@code CC1}, {@code RC0}.
   */
  String body() {
    boolean numbered = number > 0 || kind == Kind.CONTINUOUS;
    return kind.letter() + (checked ? "C" : "") + (numbered ? String.valueOf(number) : "");
  }
}
