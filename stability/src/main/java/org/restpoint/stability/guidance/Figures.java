package org.restpoint.stability.guidance;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers in sentences for people. */
final class Figures {

  private static final MathContext FOUR_DIGITS = new MathContext(4);
  private static final MathContext TWO_DIGITS = new MathContext(2);

  private Figures() {}

  /** A number with four significant digits at most and no exponent. */
  static String number(double value) {
    BigDecimal rounded = new BigDecimal(value).round(FOUR_DIGITS).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }

  /**
   * A number with its uncertainty, the latter with two digits and the former with as many decimals
   * (JCGM 100:2008, 7.2.6): {@code 9.80 ± 0.50}.
   */
  static String number(double value, double uncertainty) {
    BigDecimal spread = new BigDecimal(uncertainty).round(TWO_DIGITS);
    if (spread.signum() == 0) {
      return number(value);
    }
    int decimals = Math.max(0, spread.scale() + 2 - spread.precision());
    return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString()
        + " ± "
        + spread.setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
  }
}
