package org.restpoint.adapters.text;

import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * A decimal number as devices write it: {@code 187.4}, {@code -.5}, {@code +1.2e2}.
 *
 * <p>Narrower than {@link Double#parseDouble}, which also takes {@code NaN}, {@code 0x1p3} and
 * {@code 1d}. One too large for a double is infinite, as it is there.
 */
public final class DecimalNumber {

  private static final Pattern NUMBER =
      Pattern.compile("[-+]?(?:\\d++\\.?+\\d*+|\\.\\d++)(?:[eE][-+]?\\d++)?");

  private DecimalNumber() {}

  /** The number that the text is, white space around it aside; empty where it is none. */
  public static OptionalDouble in(String text) {
    String bare = text.strip();
    return NUMBER.matcher(bare).matches()
        ? OptionalDouble.of(Double.parseDouble(bare))
        : OptionalDouble.empty();
  }
}
