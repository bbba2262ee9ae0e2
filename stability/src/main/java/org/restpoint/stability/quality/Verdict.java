package org.restpoint.stability.quality;

/**
 * What a check says, once its uncertainty is reckoned with.
 *
 * <p>With a figure y, its expanded uncertainty {@code U = k·u} and limits that are themselves still
 * good: passed where {@code y − U} and {@code y + U} both lie within the limits, failed where the
 * whole of {@code y − U … y + U} lies beyond one of them, uncertain where a limit lies between.
 *
 * <p>Edge results: U = 0 leaves passed and failed alone; an interval wider than the limits is
 * uncertain. Decimals apart from a limit by less than 10⁻⁹ of it count as on it (binary rounding).
 *
 * <p>Methods of analysis that know nothing of uncertainty compare y alone; the results therefore
 * also tell {@code withinLimits}.
 *
 * <p>Reference: JCGM 106:2012, The role of measurement uncertainty in conformity assessment, clause
 * 8; A. Williams, B. Magnusson (eds.), Eurachem/CITAC Guide: Use of uncertainty information in
 * compliance assessment, 2nd ed. 2021, section 4.4 (rules with inconclusive results).
 */
public enum Verdict {
  /** Within the limits, and its uncertainty with it. */
  PASSED,
  /** Beyond a limit, and its uncertainty with it. */
  FAILED,
  /** A limit lies within the expanded uncertainty: neither can be said. */
  UNCERTAIN,
  /** The check was made in a way that can tell nothing. */
  NOT_JUDGED;

  /** Coverage factor k of the expanded uncertainty: about 95 %, common practice (JCGM 100, 6.3). */
  public static final double COVERAGE = 2;

  private static final double ROUNDING = 1e-9;

  static Verdict of(double figure, double standardUncertainty, double low, double high) {
    double expanded = COVERAGE * standardUncertainty;
    if (within(figure - expanded, low, high) && within(figure + expanded, low, high)) {
      return PASSED;
    }
    boolean beyond = below(figure + expanded, low) || above(figure - expanded, high);
    return beyond ? FAILED : UNCERTAIN;
  }

  static boolean within(double figure, double low, double high) {
    return !below(figure, low) && !above(figure, high);
  }

  private static boolean below(double figure, double low) {
    return figure < low - ROUNDING * Math.abs(low);
  }

  private static boolean above(double figure, double high) {
    return figure > high + ROUNDING * Math.abs(high);
  }
}
