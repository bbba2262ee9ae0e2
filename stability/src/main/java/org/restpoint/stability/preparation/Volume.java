package org.restpoint.stability.preparation;

import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * A volume measured out: by a pipette, a flask, a cylinder, a burette. Refuses, with an {@link
 * IllegalArgumentException}, a volume that is not above zero and an uncertainty below 0.
 *
 * @param name what a person calls it
 * @param millilitres mL, above zero
 * @param standardUncertaintyMillilitres u, mL, k = 1, 0 or above
 */
public record Volume(String name, double millilitres, double standardUncertaintyMillilitres) {

  private static final String UNIT = "mL";

  public Volume {
    Given.aboveZero(Quantity.of(name, UNIT, millilitres, standardUncertaintyMillilitres), UNIT);
  }

  /** A volume whose uncertainty is a tolerance of ± {@code toleranceMillilitres}. */
  public static Volume within(
      String name, double millilitres, double toleranceMillilitres, Tolerance tolerance) {
    return new Volume(name, millilitres, tolerance.standardUncertainty(toleranceMillilitres));
  }

  /** The same volume as a source of uncertainty, in mL. */
  public Quantity quantity() {
    return Quantity.of(name, UNIT, millilitres, standardUncertaintyMillilitres);
  }

  /** The same volume, its name led by where it was used. */
  Volume of(String use) {
    return new Volume(use + ": " + name, millilitres, standardUncertaintyMillilitres);
  }
}
