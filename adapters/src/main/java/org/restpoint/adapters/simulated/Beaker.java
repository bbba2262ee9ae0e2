package org.restpoint.adapters.simulated;

/**
 * A solution the simulated electrode sits in. Refuses, with an {@link IllegalArgumentException}, a
 * concentration that is not above 0 and a temperature that no such solution has.
 *
 * @param molesPerLitre concentration of the ion, mol/L, above 0
 * @param celsius temperature in °C, −50 to 150; where it swings, its mean
 */
public record Beaker(double molesPerLitre, double celsius) {

  /** Far outside of what water is liquid at, and above absolute zero with every {@link Swing}. */
  private static final double COLDEST_CELSIUS = -50;

  private static final double HOTTEST_CELSIUS = 150;

  public Beaker {
    if (!(molesPerLitre > 0) || molesPerLitre == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException(
          "a concentration of %s mol/L is not above 0 and finite".formatted(molesPerLitre));
    }
    checkCelsius(celsius);
  }

  static void checkCelsius(double celsius) {
    if (!(celsius >= COLDEST_CELSIUS && celsius <= HOTTEST_CELSIUS)) {
      throw new IllegalArgumentException(
          "a temperature of %s °C is not from -50 to 150 °C".formatted(celsius));
    }
  }
}
