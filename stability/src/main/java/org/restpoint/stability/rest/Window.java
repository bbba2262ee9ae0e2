package org.restpoint.stability.rest;

import java.math.BigDecimal;
import java.time.Duration;

/** The span of a rule's window. */
final class Window {

  /** An electrode that takes longer is not waited for. Our choice. */
  private static final Duration LONGEST = Duration.ofDays(1);

  private Window() {}

  static void check(Duration span) {
    if (span.isNegative() || span.compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException("a window is 0 s to 1 day long, not " + seconds(span));
    }
  }

  /** {@code 30 s}, {@code 0.5 s}. */
  static String seconds(Duration span) {
    BigDecimal seconds =
        BigDecimal.valueOf(span.getSeconds()).add(BigDecimal.valueOf(span.getNano(), 9));
    return (seconds.signum() == 0 ? "0" : seconds.stripTrailingZeros().toPlainString()) + " s";
  }
}
