package org.restpoint.stability.calibration;

/** What a calibration makes of the low end of an electrode's range, where its line bends. */
public sealed interface LowEnd {

  /** Nothing: the line is straight as far as the standards go. */
  record Straight() implements LowEnd {}

  /** b is fitted with E0 and S, from four standards on; kept where it is significant. */
  record Curved() implements LowEnd {}

  /**
   * b is known beforehand.
   *
   * @param molesPerLitre b, above zero
   * @param standardUncertainty u(b), mol/L, k = 1, 0 or above
   */
  record Fixed(double molesPerLitre, double standardUncertainty) implements LowEnd {

    public Fixed {
      if (!(molesPerLitre > 0) || !(standardUncertainty >= 0)) {
        throw new IllegalArgumentException(
            "a low end is above 0 mol/L, its uncertainty 0 or above");
      }
    }
  }
}
