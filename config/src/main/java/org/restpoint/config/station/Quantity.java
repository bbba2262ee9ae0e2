package org.restpoint.config.station;

/**
 * A number with its unit as the file gave it.
 *
 * @param value the number
 * @param unit a UCUM code that the key accepts: {@code mV}, {@code mg/L}, {@code Cel}, …
 */
public record Quantity(double value, String unit) {

  /** Checks that the number is finite. */
  public Quantity {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("no number: " + value + " " + unit);
    }
  }
}
