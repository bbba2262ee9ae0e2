package org.restpoint.stability.fit;

/**
 * Intercept and slope of a line {@code y = a + b·x} with what is known of their uncertainty.
 *
 * <p>Reading back: {@code x0 = (y0 − a)/b}, {@code u²(x0) = (u²(y0) + var a + 2·x0·cov(a,b) +
 * x0²·var b)/b²}.
 *
 * <p>Edge results: a slope of 0 reads nothing back and is refused there with an {@link
 * IllegalArgumentException}.
 *
 * <p>Reference: JCGM 100:2008, 5.2.2 and H.3.
 *
 * @param intercept a
 * @param slope b
 * @param interceptVariance var a, 0 or above
 * @param slopeVariance var b, 0 or above
 * @param covariance cov(a,b)
 */
public record LineEstimate(
    double intercept,
    double slope,
    double interceptVariance,
    double slopeVariance,
    double covariance) {

  /** Refuses what is not finite and a negative variance. */
  public LineEstimate {
    if (!Double.isFinite(intercept) || !Double.isFinite(slope) || !Double.isFinite(covariance)) {
      throw new IllegalArgumentException("a line has a finite intercept, slope and covariance");
    }
    if (!(interceptVariance >= 0 && slopeVariance >= 0)
        || Double.isInfinite(interceptVariance + slopeVariance)) {
      throw new IllegalArgumentException("variances are finite and 0 or above");
    }
  }

  /** The line's y at {@code x}. */
  public double at(double x) {
    return intercept + slope * x;
  }

  /** Variance of the line's y at {@code x}, without that of a new reading. */
  public double varianceAt(double x) {
    double variance = interceptVariance + x * (2 * covariance + x * slopeVariance);
    return Math.max(0, variance);
  }

  /** The same line, all standard uncertainties {@code factor} times as large. */
  public LineEstimate inflatedBy(double factor) {
    double square = factor * factor;
    return new LineEstimate(
        intercept, slope, interceptVariance * square, slopeVariance * square, covariance * square);
  }

  /**
   * The x of a reading.
   *
   * @param y0 the reading
   * @param standardUncertainty u(y0), 0 or above, independent of the line
   */
  public InversePrediction readBack(double y0, double standardUncertainty) {
    return new InversePrediction(this, y0, standardUncertainty);
  }
}
