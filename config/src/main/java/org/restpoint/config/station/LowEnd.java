package org.restpoint.config.station;

/** What becomes of an electrode's line where the concentration is low. */
public sealed interface LowEnd {

  /** It stays a straight line over the logarithm of the concentration. */
  record Straight() implements LowEnd {}

  /** It bends, and how far is found from the standards. */
  record Curved() implements LowEnd {}

  /**
   * It bends as if so much of the ion were always there.
   *
   * @param level that much, above zero, on the electrode's own basis
   * @param relativeUncertainty its standard uncertainty as a share of it, 0 to 1
   */
  record Fixed(Quantity level, double relativeUncertainty) implements LowEnd {

    /** Checks the ranges. */
    public Fixed {
      if (!(level.value() > 0)) {
        throw new IllegalArgumentException("what is always there is above zero: " + level);
      }
      if (!(relativeUncertainty >= 0 && relativeUncertainty <= 1)) {
        throw new IllegalArgumentException("a share is 0 to 1: " + relativeUncertainty);
      }
    }
  }
}
