package org.restpoint.stability.quality;

/**
 * A value and how well it is known. What is compared is in one unit throughout: mg/L with mg/L, on
 * one basis. Refuses, with an {@link IllegalArgumentException}, what is not finite and an
 * uncertainty below 0.
 *
 * @param value the value
 * @param standardUncertainty its standard uncertainty, k = 1, 0 or above, in the same unit
 */
public record Measured(double value, double standardUncertainty) {

  public Measured {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a value is a finite number, not " + value);
    }
    if (!(standardUncertainty >= 0) || Double.isInfinite(standardUncertainty)) {
      throw new IllegalArgumentException(
          "an uncertainty is a finite number, 0 or above, not " + standardUncertainty);
    }
  }

  /** A value that is taken as known exactly. */
  public static Measured exactly(double value) {
    return new Measured(value, 0);
  }

  /** The value, where it has to be above zero to be divided by. */
  double above0(String what) {
    if (!(value > 0)) {
      throw new IllegalArgumentException(what + " is above zero, not " + value);
    }
    return value;
  }
}
