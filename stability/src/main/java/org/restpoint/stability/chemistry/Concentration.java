package org.restpoint.stability.chemistry;

/**
 * A concentration as it was given or asked for. Refuses, with an {@link IllegalArgumentException},
 * a value that is negative or not finite.
 *
 * @param value 0 or above
 * @param unit its unit
 * @param basis what a mass is the mass of
 */
public record Concentration(double value, ConcentrationUnit unit, Basis basis) {

  public Concentration {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException("a concentration is 0 or above, not " + value);
    }
  }

  /** The same in mol/L of the ion. */
  public double molesPerLitre(Analyte analyte) {
    return value * unit.molesPerLitre(analyte, basis);
  }

  /** A concentration in mol/L of the ion, in another unit and basis. */
  public static Concentration ofMolesPerLitre(
      double molesPerLitre, Analyte analyte, ConcentrationUnit unit, Basis basis) {
    return new Concentration(molesPerLitre / unit.molesPerLitre(analyte, basis), unit, basis);
  }
}
