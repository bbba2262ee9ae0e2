package org.restpoint.stability.calibration;

import java.util.OptionalDouble;

/**
 * How an electrode's potential changes with temperature beside its slope.
 *
 * <p>{@code E(T) = E0 + m·(T − Tref) + S·[p + τ·(log10 a − p)]}, {@code τ = T/Tref}: the slope
 * follows the temperature, and the lines of all temperatures cross at the logarithm p of the
 * isopotential activity, up to a shift of m millivolts a kelvin.
 *
 * <ul>
 *   <li>ideal: p = 0 and m = 0, the lines cross at 1 mol/L. A real electrode's lines cross
 *       elsewhere, nobody knows where: the whole compensation is then the half-width of a
 *       rectangular distribution (JCGM 100:2008, 4.3.7);
 *   <li>isopotential: p is known;
 *   <li>measured: the potential of a solution of logarithm p changes by m, as was measured in it.
 * </ul>
 *
 * <p>Reference: R. G. Bates, Determination of pH, 2nd ed., Wiley 1973, chapter 10 (isopotential
 * point; from memory).
 *
 * @param pivotDecades p, decimal logarithm of an activity in mol/L
 * @param pivotUncertaintyDecades u(p), k = 1; empty where the electrode's own is not known
 * @param millivoltsPerKelvin m
 * @param uncertaintyMillivoltsPerKelvin u(m), k = 1, 0 or above
 */
public record Compensation(
    double pivotDecades,
    OptionalDouble pivotUncertaintyDecades,
    double millivoltsPerKelvin,
    double uncertaintyMillivoltsPerKelvin) {

  public Compensation {
    if (!Double.isFinite(pivotDecades) || !Double.isFinite(millivoltsPerKelvin)) {
      throw new IllegalArgumentException("a compensation is made of finite numbers");
    }
    if (!(pivotUncertaintyDecades.orElse(0) >= 0)
        || !(uncertaintyMillivoltsPerKelvin >= 0)
        || !Double.isFinite(pivotUncertaintyDecades.orElse(0) + uncertaintyMillivoltsPerKelvin)) {
      throw new IllegalArgumentException("an uncertainty is a finite number, 0 or above");
    }
  }

  /** The slope alone follows the temperature; how the electrode differs from that is not known. */
  public static Compensation ideal() {
    return new Compensation(0, OptionalDouble.empty(), 0, 0);
  }

  /** The potential of an activity of logarithm p does not change with temperature. */
  public static Compensation isopotential(double decades, double uncertaintyDecades) {
    return new Compensation(decades, OptionalDouble.of(uncertaintyDecades), 0, 0);
  }

  /** The potential of an activity of logarithm p changes by m, in mV/K, as was measured. */
  public static Compensation measured(
      double decades, double millivoltsPerKelvin, double uncertaintyMillivoltsPerKelvin) {
    return new Compensation(
        decades, OptionalDouble.of(0), millivoltsPerKelvin, uncertaintyMillivoltsPerKelvin);
  }

  /**
   * u(p) as it counts for a sample.
   *
   * @param uncompensatedDecades the sample's logarithm as the potential gives it without any
   *     compensation: the half-width of p where p is not known
   */
  double pivotUncertaintyDecades(double uncompensatedDecades) {
    return pivotUncertaintyDecades.orElse(
        Math.abs(uncompensatedDecades - pivotDecades) / Math.sqrt(3));
  }

  /** The abscissa {@code x = p + τ·(log10 a − p)} on which the electrode's line is straight. */
  double abscissa(double log10Activity, double temperatureRatio) {
    return pivotDecades + temperatureRatio * (log10Activity - pivotDecades);
  }
}
