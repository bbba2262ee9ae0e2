package org.restpoint.config.station;

/**
 * A number with its unit as the file gave it.
 *
 * @param value the number
 * @param unit a UCUM code that the key accepts: {@code mV}, {@code mg/L}, {@code Cel}, {@code
 *     [pH]}, …
 */
public record Quantity(double value, String unit) {

  /** The UCUM code of the pH, for which a file may write {@code pH}. */
  public static final String PH = "[pH]";

  /** Checks that the number is finite. */
  public Quantity {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("no number: " + value + " " + unit);
    }
  }
}
