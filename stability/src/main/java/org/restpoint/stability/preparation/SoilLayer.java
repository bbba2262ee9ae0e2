package org.restpoint.stability.preparation;

import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * A layer of a field. Refuses, with an {@link IllegalArgumentException}, quantities out of range or
 * in another unit.
 *
 * @param name what a person calls it: {@code 0-30 cm}
 * @param milligramsPerKilogram what its soil holds, mg/kg, 0 or above
 * @param basis of what soil
 * @param thicknessCentimetres from its upper to its lower edge, cm, above zero
 * @param bulkDensity oven-dry mass by volume in the field, g/cm3, above zero
 */
public record SoilLayer(
    String name,
    Quantity milligramsPerKilogram,
    SoilBasis basis,
    Quantity thicknessCentimetres,
    Quantity bulkDensity) {

  public SoilLayer {
    Given.notNegative(milligramsPerKilogram, "mg/kg");
    Given.aboveZero(thicknessCentimetres, "cm");
    Given.aboveZero(bulkDensity, "g/cm3");
  }

  /** A layer with the result of its soil. */
  public static SoilLayer of(
      String name, SoilResult result, Quantity thicknessCentimetres, Quantity bulkDensity) {
    return new SoilLayer(
        name, result.quantity(name), result.basis(), thicknessCentimetres, bulkDensity);
  }
}
