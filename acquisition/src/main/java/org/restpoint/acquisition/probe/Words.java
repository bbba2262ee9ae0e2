package org.restpoint.acquisition.probe;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Duration;

/** Numbers and spans in sentences for people. */
public final class Words {

  private static final MathContext FOUR_DIGITS = new MathContext(4);

  private Words() {}

  /** A number with four significant digits at most and no exponent. */
  public static String number(double value) {
    BigDecimal rounded = new BigDecimal(value).round(FOUR_DIGITS).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }

  /** A standard by its name. */
  static String standard(String name) {
    return "standard " + name;
  }

  /** A span in its largest whole unit: {@code 10 min}, {@code 90 s}, {@code 12 h}. */
  public static String span(Duration span) {
    long millis = span.toMillis();
    if (millis % 1000 != 0) {
      return millis + " ms";
    }
    long seconds = millis / 1000;
    if (seconds % 3600 == 0 && seconds > 0) {
      return seconds / 3600 + " h";
    }
    return seconds % 60 == 0 && seconds > 0 ? seconds / 60 + " min" : seconds + " s";
  }
}
