package org.restpoint.adapters.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.Optional;

/**
 * The values that are believed.
 *
 * @param unit their UCUM unit
 * @param least the least value believed
 * @param most the largest value believed
 */
record BelievedRange(String unit, double least, double most) {

  /** More digits than a device has; fewer than the noise of the conversion. */
  private static final MathContext SHOWN = new MathContext(10);

  private static final double LARGEST_IN_FULL = 1e12;

  /** What is wrong with a value; empty where nothing is. */
  Optional<String> fault(double value) {
    if (value >= least && value <= most) {
      return Optional.empty();
    }
    return Optional.of(
        String.format(
            Locale.ROOT,
            "%s %s is outside %.0f to %.0f %s",
            shown(value),
            unit,
            least,
            most,
            unit));
  }

  private static String shown(double value) {
    if (!Double.isFinite(value)) {
      return Double.toString(value);
    }
    BigDecimal rounded = BigDecimal.valueOf(value).round(SHOWN).stripTrailingZeros();
    return Math.abs(value) < LARGEST_IN_FULL ? rounded.toPlainString() : rounded.toString();
  }
}
