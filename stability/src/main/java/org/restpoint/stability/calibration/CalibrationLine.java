package org.restpoint.stability.calibration;

import org.restpoint.stability.electrode.Nernst;

/**
 * A calibrated electrode.
 *
 * <p>{@code E = E0 + S(T)·log10 c}, {@code S(T) = S·T/Tref}; c in mol/L, E in mV, T in K. E0 is the
 * potential at 1 mol/L; it is taken not to change with temperature, which is what the Nernst
 * equation says of an electrode whose standard potential does not (ideal-slope compensation).
 *
 * <p>Read back: {@code x = (E − E0)/S}, {@code log10 c = x·Tref/T}. With the covariance of E0 and
 * S, {@code u²(x) = [u²(E) + var E0 + x²·var S + 2x·cov(E0,S)]/S²}, which counts for {@code
 * (Tref/T)²} in {@code u²(log10 c)}. Temperature adds {@code (log10 c·u(T)/T)²} and, because the
 * real electrode's compensation is not known, the whole compensation {@code |log10 c − x|} as the
 * half-width of a rectangular distribution (JCGM 100:2008, 4.3.7 and 5.2.2).
 *
 * <p>Edge results: at 1 mol/L the logarithm is 0 and temperature adds nothing; a potential that no
 * electrode gives (hundreds of decades away) reads back as a logarithm all the same, whose
 * concentration is 0 or infinite. A temperature not above absolute zero is refused with an {@link
 * IllegalArgumentException}.
 *
 * @param offsetMillivolts E0
 * @param slopeMillivoltsPerDecade S at the reference temperature, negative for anions, not 0
 * @param referenceCelsius Tref − 273.15 K
 * @param offsetVariance var E0, mV², 0 or above
 * @param slopeVariance var S, (mV/decade)², 0 or above
 * @param covariance cov(E0, S), mV²/decade
 */
public record CalibrationLine(
    double offsetMillivolts,
    double slopeMillivoltsPerDecade,
    double referenceCelsius,
    double offsetVariance,
    double slopeVariance,
    double covariance) {

  public CalibrationLine {
    if (!Double.isFinite(slopeMillivoltsPerDecade) || slopeMillivoltsPerDecade == 0) {
      throw new IllegalArgumentException("a slope is a finite number other than 0");
    }
    if (!Double.isFinite(offsetMillivolts)) {
      throw new IllegalArgumentException("an offset is a finite number");
    }
    if (!(offsetVariance >= 0 && slopeVariance >= 0)
        || !Double.isFinite(offsetVariance + slopeVariance + covariance)) {
      throw new IllegalArgumentException("a variance is a finite number, 0 or above");
    }
    Nernst.kelvin(referenceCelsius); // refuses what is not above absolute zero
  }

  /** The slope as a percentage of the ideal slope at the reference temperature; 100 is ideal. */
  public double slopePercent(int charge) {
    return 100
        * slopeMillivoltsPerDecade
        / Nernst.idealSlopeMillivoltsPerDecade(charge, referenceCelsius);
  }

  /** The potential in mV that a concentration above zero (mol/L) gives at a temperature. */
  public double millivoltsAt(double molesPerLitre, double celsius) {
    return offsetMillivolts
        + slopeMillivoltsPerDecade * temperatureRatio(celsius) * Math.log10(molesPerLitre);
  }

  /**
   * Reads a potential back.
   *
   * @param millivolts the resting potential
   * @param standardUncertaintyMillivolts u(E), k = 1
   * @param celsius the sample's temperature
   * @param standardUncertaintyKelvin u(T), k = 1
   */
  public ReadBack read(
      double millivolts,
      double standardUncertaintyMillivolts,
      double celsius,
      double standardUncertaintyKelvin) {
    double x = (millivolts - offsetMillivolts) / slopeMillivoltsPerDecade;
    double ratio = temperatureRatio(celsius);
    double logConcentration = x / ratio;
    double lineVariance =
        (standardUncertaintyMillivolts * standardUncertaintyMillivolts
                + offsetVariance
                + x * x * slopeVariance
                + 2 * x * covariance)
            / (slopeMillivoltsPerDecade * slopeMillivoltsPerDecade * ratio * ratio);
    double temperature = logConcentration * standardUncertaintyKelvin / Nernst.kelvin(celsius);
    double compensation = logConcentration - x;
    double variance =
        Math.max(0, lineVariance) + temperature * temperature + compensation * compensation / 3;
    return new ReadBack(logConcentration, Math.sqrt(variance));
  }

  private double temperatureRatio(double celsius) {
    return Nernst.kelvin(celsius) / Nernst.kelvin(referenceCelsius);
  }

  /**
   * A concentration read back from the line.
   *
   * @param log10MolesPerLitre its decadic logarithm, c in mol/L
   * @param standardUncertaintyDecades standard uncertainty of the logarithm, k = 1
   */
  public record ReadBack(double log10MolesPerLitre, double standardUncertaintyDecades) {

    /** The concentration in mol/L; 0 or infinite beyond what a {@code double} holds. */
    public double molesPerLitre() {
      return Math.pow(10, log10MolesPerLitre);
    }

    /** Standard uncertainty of the concentration as a share of it: u(c)/c = ln 10 · u(log10 c). */
    public double relativeStandardUncertainty() {
      return Math.log(10) * standardUncertaintyDecades;
    }
  }
}
