package org.restpoint.adapters.guess;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.restpoint.adapters.line.DecimalMark;

/** Cuts a line into numbers, words, times and other characters. */
final class Tokens {

  private static final String STAMP =
      "(?<![\\d.,:])(?:\\d{4}-\\d\\d?-\\d\\d?|\\d{4}/\\d\\d?/\\d\\d?|\\d\\d?\\.\\d\\d?\\.\\d{2,4}|\\d\\d?/\\d\\d?/\\d{2,4})"
          + "(?:T\\d\\d:?\\d\\d(?::?\\d\\d(?:[.,]\\d+)?)?(?:Z|[-+]\\d\\d:?\\d\\d)?)?(?![\\d.,:]\\d)"
          + "|(?<![\\d.,:])\\d\\d?:\\d\\d(?::\\d\\d(?:[.,]\\d+)?)?(?![\\d:])";

  /** A sign directly after a digit is a separator; between sign and digits blanks may stand. */
  private static final String NUMBER =
      "(?:(?<!\\d)[-+] *)?(?:\\d+(?:M\\d+)?|M\\d+)(?:[eE][-+]?\\d+(?![\\p{L}\\d]))?";

  private static final String WORD = "[\\p{L}°%_]+";

  private static final Pattern POINT = pattern("\\.");
  private static final Pattern COMMA = pattern(",");
  private static final Pattern STAMPS = Pattern.compile(STAMP);

  private Tokens() {}

  private static Pattern pattern(String mark) {
    return Pattern.compile(
        "(?<gap>\\s*)(?:(?<stamp>%s)|(?<number>%s)|(?<word>%s)|(?<mark>\\S))"
            .formatted(STAMP, NUMBER.replace("M", mark), WORD));
  }

  /** The tokens of a line, white space around it aside. */
  static List<Token> of(String line, DecimalMark decimal) {
    Matcher matcher = (decimal == DecimalMark.COMMA ? COMMA : POINT).matcher(line.strip());
    List<Token> tokens = new ArrayList<>();
    while (matcher.find()) {
      tokens.add(token(matcher));
    }
    return tokens;
  }

  private static Token token(Matcher matcher) {
    for (Token.Kind kind : Token.Kind.values()) {
      String text =
          matcher.group(
              switch (kind) {
                case NUMBER -> "number";
                case WORD -> "word";
                case STAMP -> "stamp";
                case MARK -> "mark";
              });
      if (text != null) {
        return new Token(kind, matcher.group("gap"), text);
      }
    }
    throw new IllegalStateException("a token is of one of its kinds");
  }

  /** What a line looks like: two lines with other numbers and words look the same. */
  static String looks(List<Token> tokens) {
    return tokens.stream().map(Token::looks).collect(Collectors.joining());
  }

  /** The line without dates and times of day. */
  static String withoutStamps(String line) {
    return STAMPS.matcher(line).replaceAll("");
  }
}
