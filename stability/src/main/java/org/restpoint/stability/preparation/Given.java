package org.restpoint.stability.preparation;

import org.restpoint.stability.uncertainty.Source.Quantity;

/** What is asked of a quantity that somebody gives. */
final class Given {

  private Given() {}

  /** The quantity, when it is above zero and in this unit. */
  static Quantity aboveZero(Quantity quantity, String unit) {
    if (!(quantity.value() > 0)) {
      throw new IllegalArgumentException(
          quantity.name() + " is above zero, not " + quantity.value());
    }
    return in(quantity, unit);
  }

  /** The quantity, when it is 0 or above and in this unit. */
  static Quantity notNegative(Quantity quantity, String unit) {
    if (!(quantity.value() >= 0)) {
      throw new IllegalArgumentException(
          quantity.name() + " is 0 or above, not " + quantity.value());
    }
    return in(quantity, unit);
  }

  private static Quantity in(Quantity quantity, String unit) {
    if (!quantity.unit().equals(unit)) {
      throw new IllegalArgumentException(
          quantity.name() + " is given in " + unit + ", not in " + quantity.unit());
    }
    return quantity;
  }
}
