package org.restpoint.stability.interference;

/**
 * A selectivity coefficient from solutions with more and more of the primary ion beside a fixed
 * activity of the interfering one.
 *
 * <p>{@code K = a_i/a_j^(z_i/z_j)}, with a_j the fixed activity of the interfering ion j and a_i
 * that of the primary ion i where the two straight parts of the curve, prolonged, cross, mol/L.
 *
 * <p>{@code (u(K)/K)² = (u(a_i)/a_i)² + (z_i/z_j·u(a_j)/a_j)²}.
 *
 * <p>Edge results: ions of opposite sign: {@link IllegalArgumentException}. An electrode that
 * levels off for another reason gives a K that is too large.
 *
 * <p>Reference: Y. Umezawa et al., Pure Appl. Chem. 72 (2000) 1851, doi 10.1351/pac200072101851.
 *
 * @param primary the primary ion where the straight parts cross
 * @param interferent the interfering ion, at its fixed activity
 */
public record FixedInterference(Held primary, Held interferent) {

  /**
   * An ion at an activity.
   *
   * @param charge charge number, −4 to 4 and not 0
   * @param activityMolesPerLitre activity, above zero
   * @param relativeUncertainty of the activity, k = 1, 0 or above
   */
  public record Held(int charge, double activityMolesPerLitre, double relativeUncertainty) {

    public Held {
      Charges.check("the charge of an ion", charge);
      if (!(activityMolesPerLitre > 0) || Double.isInfinite(activityMolesPerLitre)) {
        throw new IllegalArgumentException(
            "the activity of an ion is above 0 mol/L, not " + activityMolesPerLitre);
      }
      if (!(relativeUncertainty >= 0) || Double.isInfinite(relativeUncertainty)) {
        throw new IllegalArgumentException(
            "an uncertainty is 0 or above, not " + relativeUncertainty);
      }
    }
  }

  public FixedInterference {
    Charges.ratio(primary.charge(), "the interfering ion", interferent.charge());
  }

  /** K with its uncertainty. */
  public Selectivity selectivity() {
    double ratio = Charges.ratio(primary.charge(), "the interfering ion", interferent.charge());
    return new Selectivity(
        primary.activityMolesPerLitre() / Math.pow(interferent.activityMolesPerLitre(), ratio),
        Math.hypot(primary.relativeUncertainty(), ratio * interferent.relativeUncertainty()));
  }
}
