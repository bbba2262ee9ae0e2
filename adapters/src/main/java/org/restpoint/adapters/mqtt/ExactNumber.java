package org.restpoint.adapters.mqtt;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A number of a JSON text with all its digits, where it is reckoned with: a time in seconds with
 * its thousandths does not survive in a double. Kept within bounds, so that a number of three
 * characters such as 1e999999999 costs nothing.
 */
final class ExactNumber {

  /** In any of our units below this: 31,700 years in milliseconds. */
  private static final BigDecimal LIMIT = new BigDecimal("1e15");

  /** Digits after the point beyond which nothing counts. */
  private static final int FINEST = 30;

  private ExactNumber() {}

  /**
   * The number at a node that is one.
   *
   * @param what what it is, for the reason
   */
  static BigDecimal of(JsonNode number, String what) throws RejectedMessageException {
    BigDecimal exact = number.decimalValue();
    if (exact.abs().compareTo(LIMIT) >= 0) {
      throw new RejectedMessageException(what + " is too large a number");
    }
    boolean nothing = exact.signum() == 0 || exact.precision() - exact.scale() < -FINEST;
    return nothing ? BigDecimal.ZERO : exact;
  }

  /** The whole part, downwards, of a number with its point so many digits further right. */
  static long whole(BigDecimal number, int digits) {
    return number.movePointRight(digits).setScale(0, RoundingMode.FLOOR).longValueExact();
  }
}
