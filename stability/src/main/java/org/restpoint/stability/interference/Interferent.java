package org.restpoint.stability.interference;

/**
 * An ion that an electrode takes for its own.
 *
 * <p>{@code b = K·a^(z_i/z_j)}, mol/L: the activity of the primary ion i that the interfering ion j
 * makes up, with K the potentiometric selectivity coefficient K_ij, a the activity of j in mol/L,
 * z_i and z_j the charge numbers.
 *
 * <p>{@code u(b)/b = √((u(K)/K)² + (z_i/z_j · u(a)/a)²)}.
 *
 * <p>Edge results: activity 0 makes up 0. Opposite charges: {@link IllegalArgumentException}, since
 * the equation holds for ions of one sign.
 *
 * <p>Reference: R. P. Buck, E. Lindner, Pure Appl. Chem. 66 (1994) 2527, doi
 * 10.1351/pac199466122527; Y. Umezawa et al., Pure Appl. Chem. 72 (2000) 1851, doi
 * 10.1351/pac200072101851, which lists coefficients.
 *
 * @param name what a person calls it, not blank
 * @param charge its charge number z_j, −4 to 4 and not 0
 * @param selectivity K, above 0, in (mol/L)^(1 − z_i/z_j): a plain number where the charges are
 *     alike
 * @param activityMolesPerLitre a, 0 or above
 * @param relativeUncertaintyOfActivity u(a)/a, k = 1, 0 or above
 * @param relativeUncertaintyOfSelectivity u(K)/K, k = 1, 0 or above
 */
public record Interferent(
    String name,
    int charge,
    double selectivity,
    double activityMolesPerLitre,
    double relativeUncertaintyOfActivity,
    double relativeUncertaintyOfSelectivity) {

  public Interferent {
    if (name.isBlank()) {
      throw new IllegalArgumentException("an interfering ion has a name");
    }
    Charges.check("the charge of " + name, charge);
    if (!(selectivity > 0) || Double.isInfinite(selectivity)) {
      throw new IllegalArgumentException(
          "the selectivity coefficient of " + name + " is above 0, not " + selectivity);
    }
    checkNotNegative("the activity of " + name, activityMolesPerLitre);
    checkNotNegative("the uncertainty of the activity of " + name, relativeUncertaintyOfActivity);
    checkNotNegative(
        "the uncertainty of the selectivity coefficient of " + name,
        relativeUncertaintyOfSelectivity);
  }

  /** An ion whose coefficient and activity are taken as known. */
  public static Interferent exactly(
      String name, int charge, double selectivity, double activityMolesPerLitre) {
    return new Interferent(name, charge, selectivity, activityMolesPerLitre, 0, 0);
  }

  /**
   * The activity of the primary ion that it makes up, b, mol/L.
   *
   * @param primaryCharge charge number of the primary ion, of the same sign
   */
  public double madeUpMolesPerLitre(int primaryCharge) {
    return selectivity * Math.pow(activityMolesPerLitre, exponent(primaryCharge));
  }

  /** u(b), mol/L, k = 1. */
  public double standardUncertainty(int primaryCharge) {
    return madeUpMolesPerLitre(primaryCharge)
        * Math.hypot(
            relativeUncertaintyOfSelectivity,
            exponent(primaryCharge) * relativeUncertaintyOfActivity);
  }

  private double exponent(int primaryCharge) {
    return Charges.ratio(primaryCharge, name, charge);
  }

  private static void checkNotNegative(String what, double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(what + " is 0 or above, not " + value);
    }
  }
}
