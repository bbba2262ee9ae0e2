package org.restpoint.stability.fit;

import java.util.ArrayList;
import java.util.List;

/**
 * An electrode's curve with its bend at the low end: {@code y = a + s·τ·log10(c + b)}.
 *
 * <p>Far above b it is the line {@code a + s·τ·log10 c}, far below it is level at {@code a +
 * s·τ·log10 b}; the two cross at {@code c = b}, where the curve has half the line's steepness and
 * lies {@code s·τ·log10 2} from it (18 mV for a monovalent ion at 25 °C).
 *
 * <p>Reading back: {@code c = 10^((y−a)/(s·τ)) − b}, with {@code u²(c)} to first order from u(y)
 * and the covariance of a, s and b.
 *
 * <p>Edge results: a reading beyond the level part reads back as a concentration below 0, which is
 * left to the caller to name.
 *
 * <p>Reference: R. P. Buck, E. Lindner, Recommendations for nomenclature of ion-selective
 * electrodes, Pure Appl. Chem. 66 (1994) 2527, doi 10.1351/pac199466122527.
 *
 * @param offset a, in the unit of y: the potential at {@code c + b = 1}
 * @param slope s, in the unit of y a decade
 * @param background b, above 0, in the unit of c
 * @param covariance of a, s and b in this order, from the uncertainties of the standards
 * @param residuals y less the curve, in the order of the standards
 * @param sensitivities derivatives of a, s and b in this order by the y of each standard
 * @param consistency χ² with n − 3 degrees of freedom
 */
public record LowEndCurve(
    double offset,
    double slope,
    double background,
    Covariance covariance,
    List<Double> residuals,
    List<List<Double>> sensitivities,
    Consistency consistency) {

  private static final double LN_10 = Math.log(10);

  /** Keeps copies. */
  public LowEndCurve {
    residuals = List.copyOf(residuals);
    sensitivities = List.copyOf(sensitivities);
  }

  /** From a fit of a, s and ln b. */
  static LowEndCurve of(CurveFitOutcome.Converged fit) {
    double background = Math.exp(fit.parameters().get(2));
    double[] scale = {1, 1, background};
    List<Double> entries = new ArrayList<>();
    List<List<Double>> sensitivities = new ArrayList<>();
    for (int i = 0; i < scale.length; i++) {
      for (int j = 0; j < scale.length; j++) {
        entries.add(scale[i] * scale[j] * fit.covariance().of(i, j));
      }
      double factor = scale[i];
      sensitivities.add(fit.sensitivities().get(i).stream().map(by -> factor * by).toList());
    }
    return new LowEndCurve(
        fit.parameters().get(0),
        fit.parameters().get(1),
        background,
        new Covariance(scale.length, entries),
        fit.residuals(),
        sensitivities,
        fit.consistency());
  }

  /** The curve's y at a concentration of 0 or above and a temperature ratio τ. */
  public double at(double concentration, double tau) {
    return offset + slope * tau * Math.log10(concentration + background);
  }

  /** The concentration at a reading {@code y}; below 0 past the level part. */
  public double concentrationAt(double y, double tau) {
    return apparent(y, tau) - background;
  }

  /**
   * u(c) of the concentration at a reading.
   *
   * @param y the reading
   * @param standardUncertainty u(y), 0 or above, independent of the curve
   * @param tau τ of the reading
   */
  public double concentrationUncertainty(double y, double standardUncertainty, double tau) {
    double byReading = apparent(y, tau) * LN_10 / (slope * tau);
    double curve =
        inflatedCovariance().propagated(-byReading, -byReading * (y - offset) / slope, -1);
    double reading = byReading * standardUncertainty;
    return Math.sqrt(reading * reading + curve);
  }

  /** The covariance, larger by the Birge ratio squared where the scatter is inconsistent. */
  public Covariance inflatedCovariance() {
    double factor = consistency.inflation();
    return covariance.times(factor * factor);
  }

  /** {@code c + b} at a reading. */
  private double apparent(double y, double tau) {
    return Math.pow(10, (y - offset) / (slope * tau));
  }
}
