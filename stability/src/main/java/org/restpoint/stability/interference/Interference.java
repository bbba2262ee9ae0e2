package org.restpoint.stability.interference;

/**
 * What interfering ions do to a reading, and what is left without them.
 *
 * <p>{@code a′ = a + b} and {@code E = E0 + S·log10(a + b)}: a′ the apparent activity, which the
 * calibration reads, a the true one of the primary ion, b what the others make up ({@link
 * Background}), all mol/L.
 *
 * <ul>
 *   <li>bias {@code a′ − a = b}, in % {@code 100·b/a}
 *   <li>shift of the potential {@code S·log10(1 + b/a)}, mV, with the sign of the slope S
 *   <li>corrected {@code a = a′ − b}, {@code u²(a) = u²(a′) + u²(b)}
 * </ul>
 *
 * <p>Edge results:
 *
 * <ul>
 *   <li>b = 0: bias 0, shift 0, corrected is the apparent
 *   <li>a′ ≤ b: nothing is left ({@link Correction.NothingLeft})
 *   <li>a relative bias or a shift of a true activity of 0: {@link IllegalArgumentException}
 * </ul>
 *
 * <p>Reference: R. P. Buck, E. Lindner, Pure Appl. Chem. 66 (1994) 2527, doi
 * 10.1351/pac199466122527.
 *
 * @param background what the interfering ions make up
 */
public record Interference(Background background) {

  /** a′ of a true activity a, 0 or above, both mol/L. */
  public double apparentMolesPerLitre(double trueMolesPerLitre) {
    checkActivity("the true activity", trueMolesPerLitre);
    return trueMolesPerLitre + background.molesPerLitre();
  }

  /** By how much the apparent activity is too high, mol/L, whatever the true one. */
  public double biasMolesPerLitre() {
    return background.molesPerLitre();
  }

  /** By how much the apparent activity is too high, in % of the true one, which is above zero. */
  public double biasPercent(double trueMolesPerLitre) {
    return 100 * biasRatio(trueMolesPerLitre);
  }

  /**
   * By how much the potential is off, mV.
   *
   * @param trueMolesPerLitre a, above zero
   * @param slopeMillivoltsPerDecade S, with the sign of the charge, not 0
   */
  public double shiftMillivolts(double trueMolesPerLitre, double slopeMillivoltsPerDecade) {
    if (slopeMillivoltsPerDecade == 0 || !Double.isFinite(slopeMillivoltsPerDecade)) {
      throw new IllegalArgumentException(
          "a slope is a finite number of mV per decade and not 0, not " + slopeMillivoltsPerDecade);
    }
    return slopeMillivoltsPerDecade * Math.log1p(biasRatio(trueMolesPerLitre)) / Math.log(10);
  }

  /**
   * What is left of an apparent activity without the interfering ions.
   *
   * @param apparentMolesPerLitre a′, 0 or above
   * @param standardUncertainty u(a′), mol/L, k = 1, 0 or above
   */
  public Correction corrected(double apparentMolesPerLitre, double standardUncertainty) {
    checkActivity("the apparent activity", apparentMolesPerLitre);
    checkActivity("the uncertainty of the apparent activity", standardUncertainty);
    double left = apparentMolesPerLitre - background.molesPerLitre();
    if (left > 0) {
      return new Correction.Corrected(
          left, Math.hypot(standardUncertainty, background.standardUncertainty()));
    }
    return new Correction.NothingLeft(apparentMolesPerLitre, background);
  }

  private double biasRatio(double trueMolesPerLitre) {
    checkActivity("the true activity", trueMolesPerLitre);
    if (trueMolesPerLitre == 0) {
      throw new IllegalArgumentException("there is no bias relative to a true activity of 0 mol/L");
    }
    return background.molesPerLitre() / trueMolesPerLitre;
  }

  private static void checkActivity(String what, double molesPerLitre) {
    if (!(molesPerLitre >= 0) || Double.isInfinite(molesPerLitre)) {
      throw new IllegalArgumentException(what + " is 0 mol/L or above, not " + molesPerLitre);
    }
  }
}
