package org.restpoint.stability.activity;

import java.util.List;

/**
 * How strongly the ions of a solution act on each other.
 *
 * <p>{@code I = ½ Σ c·z²}, mol/L, over every ion of the solution, with c its concentration in mol/L
 * and z its charge number.
 *
 * <p>Edge results: no ions, or none of any concentration, is I = 0. An I above {@value
 * #HIGHEST_MOLES_PER_LITRE} mol/L is a slip, since no salt dissolves to it in water, and is
 * refused.
 *
 * <p>Reference: G. N. Lewis, M. Randall, J. Am. Chem. Soc. 43 (1921) 1112; E. R. Cohen et al.
 * (IUPAC Green Book), 3rd ed., 2007, section 2.13.
 *
 * @param molesPerLitre I, 0 to {@value #HIGHEST_MOLES_PER_LITRE} mol/L
 */
public record IonicStrength(double molesPerLitre) {

  /** Twice that of calcium chloride at saturation, mol/L: our choice, only to catch slips. */
  public static final double HIGHEST_MOLES_PER_LITRE = 50;

  /**
   * One ion of a solution.
   *
   * @param charge its charge number z, not 0
   * @param molesPerLitre c, 0 or above and finite
   */
  public record Dissolved(int charge, double molesPerLitre) {

    public Dissolved {
      if (charge == 0) {
        throw new IllegalArgumentException("an ion has a charge");
      }
      if (!(molesPerLitre >= 0) || Double.isInfinite(molesPerLitre)) {
        throw new IllegalArgumentException(
            "a concentration is 0 mol/L or above, not " + molesPerLitre);
      }
    }
  }

  public IonicStrength {
    if (!(molesPerLitre >= 0 && molesPerLitre <= HIGHEST_MOLES_PER_LITRE)) {
      throw new IllegalArgumentException(
          "an ionic strength is 0 to "
              + HIGHEST_MOLES_PER_LITRE
              + " mol/L, not "
              + molesPerLitre
              + " mol/L");
    }
  }

  /** That of all ions of a solution, counter-ions included; 0 of none. */
  public static IonicStrength of(List<Dissolved> ions) {
    double sum = 0;
    for (Dissolved ion : ions) {
      sum += ion.molesPerLitre() * ion.charge() * ion.charge();
    }
    return new IonicStrength(sum / 2);
  }

  /**
   * That of a salt of one ion with counter-ions of charge 1, wholly dissolved into ions: {@code I =
   * ½·c·(z² + |z|)}, so c for a charge of ±1 (KNO₃) and 3c for ±2 (CaCl₂).
   *
   * @param charge the ion's charge number z, not 0
   * @param molesPerLitre concentration of the ion c, 0 or above
   */
  public static IonicStrength ofSalt(int charge, double molesPerLitre) {
    return of(
        List.of(
            new Dissolved(charge, molesPerLitre),
            new Dissolved(-Integer.signum(charge), Math.abs(charge) * molesPerLitre)));
  }
}
