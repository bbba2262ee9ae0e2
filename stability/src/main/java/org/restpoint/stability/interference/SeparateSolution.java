package org.restpoint.stability.interference;

/**
 * A selectivity coefficient from two solutions, one of each ion and without the other.
 *
 * <p>{@code log10 K = (E_j − E_i)/S + log10 a_i − (z_i/z_j)·log10 a_j}, with E_i in a solution of
 * the primary ion i at activity a_i, E_j in one of the interfering ion j at a_j, S the slope of the
 * primary ion in mV/decade. At equal activities a it is the usual {@code (E_j − E_i)/S + (1 −
 * z_i/z_j)·log10 a}.
 *
 * <p>{@code u²(ln K) = (ln 10/S)²·(u²(E_i) + u²(E_j) + ((E_j − E_i)/S·u(S))²) + (u(a_i)/a_i)² +
 * (z_i/z_j·u(a_j)/a_j)²}.
 *
 * <p>Edge results: ions of opposite sign, a slope against the sign of the primary ion's charge:
 * {@link IllegalArgumentException}. The method presumes that the electrode answers to j with the
 * same kind of slope; where it does not, K depends on the activity it was found at.
 *
 * <p>Reference: Y. Umezawa et al., Pure Appl. Chem. 72 (2000) 1851, doi 10.1351/pac200072101851.
 *
 * @param primary the solution of the primary ion
 * @param interferent the solution of the interfering ion
 * @param slopeMillivoltsPerDecade S of the primary ion, with the sign of its charge
 * @param slopeStandardUncertainty u(S), mV/decade, k = 1, 0 or above
 */
public record SeparateSolution(
    Solution primary,
    Solution interferent,
    double slopeMillivoltsPerDecade,
    double slopeStandardUncertainty) {

  /**
   * A solution of one ion, and the electrode's potential in it.
   *
   * @param charge charge number of the ion, −4 to 4 and not 0
   * @param activityMolesPerLitre its activity, above zero
   * @param relativeUncertaintyOfActivity k = 1, 0 or above
   * @param millivolts potential at rest, finite
   * @param millivoltsStandardUncertainty k = 1, 0 or above
   */
  public record Solution(
      int charge,
      double activityMolesPerLitre,
      double relativeUncertaintyOfActivity,
      double millivolts,
      double millivoltsStandardUncertainty) {

    public Solution {
      Charges.check("the charge of an ion", charge);
      if (!(activityMolesPerLitre > 0) || Double.isInfinite(activityMolesPerLitre)) {
        throw new IllegalArgumentException(
            "the activity of a solution is above 0 mol/L, not " + activityMolesPerLitre);
      }
      if (!Double.isFinite(millivolts)) {
        throw new IllegalArgumentException("a potential is a finite number, not " + millivolts);
      }
      checkUncertainty(relativeUncertaintyOfActivity);
      checkUncertainty(millivoltsStandardUncertainty);
    }
  }

  public SeparateSolution {
    if (!(slopeMillivoltsPerDecade * primary.charge() > 0)
        || Double.isInfinite(slopeMillivoltsPerDecade)) {
      throw new IllegalArgumentException(
          "the slope of an ion of charge "
              + primary.charge()
              + " has its sign, which "
              + slopeMillivoltsPerDecade
              + " mV/decade has not");
    }
    checkUncertainty(slopeStandardUncertainty);
    Charges.ratio(primary.charge(), "the interfering ion", interferent.charge());
  }

  /** K with its uncertainty. */
  public Selectivity selectivity() {
    double ratio = Charges.ratio(primary.charge(), "the interfering ion", interferent.charge());
    double decades = (interferent.millivolts() - primary.millivolts()) / slopeMillivoltsPerDecade;
    double log10 =
        decades
            + Math.log10(primary.activityMolesPerLitre())
            - ratio * Math.log10(interferent.activityMolesPerLitre());
    double millivolts =
        Math.hypot(
            Math.hypot(
                primary.millivoltsStandardUncertainty(),
                interferent.millivoltsStandardUncertainty()),
            decades * slopeStandardUncertainty);
    double activities =
        Math.hypot(
            primary.relativeUncertaintyOfActivity(),
            ratio * interferent.relativeUncertaintyOfActivity());
    return new Selectivity(
        Math.pow(10, log10),
        Math.hypot(Math.log(10) * millivolts / slopeMillivoltsPerDecade, activities));
  }

  private static void checkUncertainty(double uncertainty) {
    if (!(uncertainty >= 0) || Double.isInfinite(uncertainty)) {
      throw new IllegalArgumentException("an uncertainty is 0 or above, not " + uncertainty);
    }
  }
}
