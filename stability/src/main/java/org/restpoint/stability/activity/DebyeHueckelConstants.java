package org.restpoint.stability.activity;

/**
 * What water at a temperature gives to the Debye–Hückel equation.
 *
 * <p>{@code log10 γ = −A·z²·√I/(1 + B·å·√I)}: A in (L/mol)^½, B in (L/mol)^½ per length. Linear
 * between the table's temperatures, which is within 0.0002 of A.
 *
 * <p>Edge results:
 *
 * <ul>
 *   <li>below 0 °C and above 60 °C the table's last line is prolonged, and {@link #beyondTable} is
 *       true
 *   <li>below −10 °C and above 100 °C, where there is no water: {@link IllegalArgumentException}
 * </ul>
 *
 * <p>The table is for mol/kg of water; for mol/L, A and B would be greater by 1/√ρ, 0.15 % at 25 °C
 * and 0.9 % at 60 °C. The uncertainty that {@link ActivityModel} states covers that.
 *
 * <p>Method: linear interpolation. Reference: R. A. Freeze, J. A. Cherry, Groundwater,
 * Prentice-Hall 1979, appendix IV; G. G. Manov, R. G. Bates, W. J. Hamer, S. F. Acree, J. Am. Chem.
 * Soc. 65 (1943) 1765.
 *
 * @param a A, (L/mol)^½, above zero
 * @param perPicometre B, (L/mol)^½/pm, 0 or above; 0 makes the limiting law
 * @param beyondTable whether the temperature is outside 0 to 60 °C
 */
public record DebyeHueckelConstants(double a, double perPicometre, boolean beyondTable) {

  private static final double[] CELSIUS = {0, 5, 10, 15, 20, 25, 30, 35, 40, 50, 60};
  private static final double[] A = {
    .4883, .4921, .4960, .5000, .5042, .5085, .5130, .5175, .5221, .5319, .5425
  };
  private static final double[] PER_ANGSTROM = {
    .3241, .3249, .3258, .3262, .3273, .3281, .3290, .3297, .3305, .3321, .3338
  };
  private static final double PICOMETRES_PER_ANGSTROM = 100;

  private static final double LOWEST_CELSIUS = -10;
  private static final double HIGHEST_CELSIUS = 100;

  public DebyeHueckelConstants {
    if (!(a > 0 && perPicometre >= 0) || Double.isInfinite(a) || Double.isInfinite(perPicometre)) {
      throw new IllegalArgumentException(
          "A is above 0 and B is 0 or above, not " + a + " and " + perPicometre);
    }
  }

  /** Those of water at a temperature, −10 to 100 °C. */
  public static DebyeHueckelConstants at(double celsius) {
    if (!(celsius >= LOWEST_CELSIUS && celsius <= HIGHEST_CELSIUS)) {
      throw new IllegalArgumentException(
          "activity coefficients are for water of -10 to 100 °C, not " + celsius + " °C");
    }
    int last = CELSIUS.length - 1;
    int upper = 1;
    while (upper < last && celsius > CELSIUS[upper]) {
      upper++;
    }
    double share = (celsius - CELSIUS[upper - 1]) / (CELSIUS[upper] - CELSIUS[upper - 1]);
    return new DebyeHueckelConstants(
        between(A, upper, share),
        between(PER_ANGSTROM, upper, share) / PICOMETRES_PER_ANGSTROM,
        celsius < CELSIUS[0] || celsius > CELSIUS[last]);
  }

  private static double between(double[] table, int upper, double share) {
    return table[upper - 1] + share * (table[upper] - table[upper - 1]);
  }
}
