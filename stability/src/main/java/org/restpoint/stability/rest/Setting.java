package org.restpoint.stability.rest;

import java.math.BigDecimal;
import java.time.Duration;

/** How a rule writes its settings, and how long its window may be. */
final class Setting {

  /** An electrode that takes longer is not waited for. Our choice. */
  private static final Duration LONGEST = Duration.ofDays(1);

  private Setting() {}

  static void checkSpan(Duration span) {
    if (span.isNegative() || span.compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException("a window is 0 s to 1 day long, not " + seconds(span));
    }
  }

  /** {@code 30 s}, {@code 0.5 s}. */
  static String seconds(Duration span) {
    BigDecimal seconds =
        BigDecimal.valueOf(span.getSeconds()).add(BigDecimal.valueOf(span.getNano(), 9));
    return plain(seconds) + " s";
  }

  /** {@code 0.1}, {@code 2}: alike in every language. */
  static String number(double value) {
    return plain(BigDecimal.valueOf(value));
  }

  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }
}
