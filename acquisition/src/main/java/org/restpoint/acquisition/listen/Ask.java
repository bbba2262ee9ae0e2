package org.restpoint.acquisition.listen;

import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a meter is asked, because a person said so. Refuses, with an {@link
 * IllegalArgumentException}, what is not 1 to 256 ASCII characters, as the station file does.
 *
 * @param text what is sent
 * @param every how often
 */
public record Ask(String text, Duration every) {

  private static final int LONGEST = 256;

  /** A backslash and what it names. */
  private static final Pattern CODE = Pattern.compile("(?s)\\\\(x\\p{XDigit}{2}|.?)");

  /** The length of {@code x1B}. */
  private static final int HEXADECIMAL = 3;

  public Ask {
    if (text.isEmpty() || text.length() > LONGEST || text.chars().anyMatch(c -> c > 0x7F)) {
      throw new IllegalArgumentException(
          "expected 1 to %d ASCII characters to send".formatted(LONGEST));
    }
  }

  /**
   * Reads what a person typed, in which {@code \r}, {@code \n}, {@code \t}, {@code \\} and {@code
   * \x1B} stand for the characters they name.
   *
   * @throws IllegalArgumentException for another character after a backslash
   */
  public static Ask typed(String typed, Duration every) {
    StringBuilder text = new StringBuilder();
    Matcher codes = CODE.matcher(typed);
    while (codes.find()) {
      codes.appendReplacement(text, Matcher.quoteReplacement(named(codes.group(1))));
    }
    return new Ask(codes.appendTail(text).toString(), every);
  }

  private static String named(String code) {
    return switch (code) {
      case "r" -> "\r";
      case "n" -> "\n";
      case "t" -> "\t";
      case "\\" -> "\\";
      default -> {
        if (code.length() != HEXADECIMAL) {
          throw new IllegalArgumentException(
              "expected \\r, \\n, \\t, \\\\ or \\x and two hexadecimal digits after a backslash");
        }
        yield String.valueOf((char) Integer.parseInt(code.substring(1), 16));
      }
    };
  }
}
