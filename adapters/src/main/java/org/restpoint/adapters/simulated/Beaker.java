package org.restpoint.adapters.simulated;

/**
 * A solution the simulated electrode sits in. Refuses, with an {@link IllegalArgumentException}, a
 * concentration that is not above 0 and a temperature that is not above absolute zero.
 *
 * @param molesPerLitre concentration of the ion, mol/L, above 0
 * @param celsius temperature, °C, above −273.15
 */
public record Beaker(double molesPerLitre, double celsius) {

  /** Absolute zero in °C (SI, by definition of the degree Celsius). */
  private static final double ABSOLUTE_ZERO_CELSIUS = -273.15;

  public Beaker {
    if (!(molesPerLitre > 0) || molesPerLitre == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException(
          "a concentration of %s mol/L is not above 0 and finite".formatted(molesPerLitre));
    }
    if (!(celsius > ABSOLUTE_ZERO_CELSIUS) || celsius == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException(
          "a temperature of %s °C is not above absolute zero and finite".formatted(celsius));
    }
  }
}
