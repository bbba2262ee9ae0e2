package org.restpoint.stability.calibration;

import java.util.Collections;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.fit.Covariance;

/**
 * A calibrated electrode.
 *
 * <p>{@code E = E0 + m·(T − Tref) + S·[p + τ·(log10(a + b) − p)]}, {@code τ = T/Tref}; a is the
 * activity in mol/L ({@code γ·c}; with an ionic-strength adjustor γ is taken as 1 and a as the
 * concentration c), E in mV, T in K; m and p are those of the {@link Compensation}. E0 is the
 * potential at 1 mol/L and Tref. b bends the line at its low end, where the electrode answers to
 * what its own membrane gives off; it is the detection limit of IUPAC, where the prolonged straight
 * line crosses the level that the potential tends to.
 *
 * <p>Edge results: a + b = 0 has no potential. The covariance of (E0, S, b) is kept in two parts,
 * independent of each other: what comes from the standards' concentrations, and the rest.
 *
 * <p>Reference: R. P. Buck and E. Lindner, Recommendations for nomenclature of ion-selective
 * electrodes, Pure Appl. Chem. 66 (1994) 2527, doi 10.1351/pac199466122527; the form with b is
 * customary for bent low ends.
 *
 * @param offsetMillivolts E0
 * @param slopeMillivoltsPerDecade S at the reference temperature, negative for anions, not 0
 * @param lowEndMolesPerLitre b, 0 or above; 0 for a straight line
 * @param referenceCelsius Tref − 273.15 K
 * @param compensation how temperature counts
 * @param fromLine covariance from the potentials of the standards, or from a slope taken over
 * @param fromStandards covariance from the concentrations of the standards
 */
public record ResponseCurve(
    double offsetMillivolts,
    double slopeMillivoltsPerDecade,
    double lowEndMolesPerLitre,
    double referenceCelsius,
    Compensation compensation,
    Covariance fromLine,
    Covariance fromStandards) {

  /** Parameters without uncertainty. */
  public static final Covariance NO_DOUBT = new Covariance(3, Collections.nCopies(9, 0.0));

  public ResponseCurve {
    if (!Double.isFinite(slopeMillivoltsPerDecade) || slopeMillivoltsPerDecade == 0) {
      throw new IllegalArgumentException("a slope is a finite number other than 0");
    }
    if (!Double.isFinite(offsetMillivolts)) {
      throw new IllegalArgumentException("an offset is a finite number");
    }
    if (!(lowEndMolesPerLitre >= 0) || Double.isInfinite(lowEndMolesPerLitre)) {
      throw new IllegalArgumentException("a low end is 0 mol/L or above");
    }
    Nernst.kelvin(referenceCelsius); // refuses what is not above absolute zero
    if (fromLine.size() != 3 || fromStandards.size() != 3) {
      throw new IllegalArgumentException("a response curve has three parameters");
    }
  }

  /** A straight line without doubt, compensated ideally. */
  public static ResponseCurve straight(
      double offsetMillivolts, double slopeMillivoltsPerDecade, double referenceCelsius) {
    return new ResponseCurve(
        offsetMillivolts,
        slopeMillivoltsPerDecade,
        0,
        referenceCelsius,
        Compensation.ideal(),
        NO_DOUBT,
        NO_DOUBT);
  }

  /** All of the covariance of E0, S and b. */
  public Covariance covariance() {
    return fromLine.plus(fromStandards);
  }

  /** Standard uncertainty of the slope, mV/decade, k = 1. */
  public double slopeStandardUncertainty() {
    return covariance().standardUncertainty(1);
  }

  /** The slope as a percentage of the ideal slope at the reference temperature; 100 is ideal. */
  public double slopePercent(int charge) {
    return 100
        * slopeMillivoltsPerDecade
        / Nernst.idealSlopeMillivoltsPerDecade(charge, referenceCelsius);
  }

  /**
   * The potential in mV that an activity (mol/L; above zero where b is 0) gives at a temperature.
   */
  public double millivoltsAt(double activity, double celsius) {
    double ratio = Nernst.kelvin(celsius) / Nernst.kelvin(referenceCelsius);
    double log = Math.log10(activity + lowEndMolesPerLitre);
    return offsetMillivolts
        + compensation.millivoltsPerKelvin() * (celsius - referenceCelsius)
        + slopeMillivoltsPerDecade * compensation.abscissa(log, ratio);
  }

  /** Reads a potential at rest back. */
  public ReadBack read(RestedSample sample) {
    return new ReadBack(this, sample);
  }
}
