package org.restpoint.stability.interference;

/** An apparent activity after what interfering ions make up has been taken off. */
public sealed interface Correction {

  /**
   * What the primary ion itself has.
   *
   * @param molesPerLitre its activity, above zero
   * @param standardUncertainty u, mol/L, k = 1; not below that of the interfering ions, and so
   *     possibly larger than the activity
   */
  record Corrected(double molesPerLitre, double standardUncertainty) implements Correction {

    public Corrected {
      if (!(molesPerLitre > 0 && standardUncertainty >= 0)) {
        throw new IllegalArgumentException(
            "what is left is above 0 mol/L, ± 0 or above, not "
                + molesPerLitre
                + " ± "
                + standardUncertainty);
      }
    }

    /** u over the activity. */
    public double relativeStandardUncertainty() {
      return standardUncertainty / molesPerLitre;
    }
  }

  /**
   * The interfering ions explain the whole reading, or more: the primary ion cannot be told from
   * none.
   *
   * @param apparentMolesPerLitre the apparent activity, mol/L
   * @param background what they make up, no less than it
   */
  record NothingLeft(double apparentMolesPerLitre, Background background) implements Correction {}
}
