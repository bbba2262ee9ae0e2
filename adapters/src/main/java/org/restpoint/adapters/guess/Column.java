package org.restpoint.adapters.guess;

import java.math.BigDecimal;
import java.util.List;
import org.restpoint.adapters.line.DecimalMark;

/**
 * The tokens that stand at one place of lines that look alike.
 *
 * @param tokens one a line, all of one kind, at least one
 * @param numbers their values, where they are numbers; none otherwise
 */
record Column(List<Token> tokens, List<Double> numbers) {

  static Column of(List<Token> tokens, DecimalMark decimal) {
    char mark = decimal == DecimalMark.COMMA ? ',' : '.';
    return new Column(
        List.copyOf(tokens),
        tokens.get(0).kind() == Token.Kind.NUMBER
            ? tokens.stream().map(token -> number(token.text(), mark)).toList()
            : List.of());
  }

  private static double number(String text, char mark) {
    return Double.parseDouble(text.replace(" ", "").replace(mark, '.'));
  }

  Token.Kind kind() {
    return tokens.get(0).kind();
  }

  /** What stands there in the first line. */
  String text() {
    return tokens.get(0).text();
  }

  boolean isNumber() {
    return kind() == Token.Kind.NUMBER;
  }

  /** Whether the same stands there in all lines. */
  boolean isConstant() {
    return tokens.stream().map(Token::text).distinct().count() == 1;
  }

  double least() {
    return numbers.stream().mapToDouble(Double::doubleValue).min().orElse(Double.NaN);
  }

  double most() {
    return numbers.stream().mapToDouble(Double::doubleValue).max().orElse(Double.NaN);
  }

  /** Whether all of its values lie from one to another. */
  boolean isWithin(double from, double to) {
    return least() >= from && most() <= to;
  }

  /** Whether any of them is written with decimals. */
  boolean hasDecimals() {
    return tokens.stream().anyMatch(token -> token.text().matches(".*[.,].*"));
  }

  /** Its numbers for a person: {@code 21.5 to 21.7}. */
  String shown() {
    return isConstant() ? text() : "%s to %s".formatted(plain(least()), plain(most()));
  }

  private static String plain(double value) {
    return Double.isFinite(value)
        ? BigDecimal.valueOf(value).stripTrailingZeros().toPlainString()
        : Double.toString(value);
  }

  /** Whether it goes on by the same whole step from each line to the next: a number of the line. */
  boolean isCounter() {
    if (numbers.size() < 3 || hasDecimals()) {
      return false;
    }
    double step = numbers.get(1) - numbers.get(0);
    for (int i = 2; i < numbers.size(); i++) {
      if (numbers.get(i) - numbers.get(i - 1) != step) {
        return false;
      }
    }
    return step != 0;
  }
}
