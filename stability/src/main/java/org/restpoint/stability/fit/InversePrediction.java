package org.restpoint.stability.fit;

/**
 * The x where a line has a reading y0, with its standard uncertainty and its exact interval.
 *
 * <p>The interval holds every x that the reading does not contradict: {@code (a + b·x − y0)² ≤
 * k²·(u²(y0) + var a + 2x·cov(a,b) + x²·var b)}. About x0, with z = x − x0, {@code V = b²·u²(x0)}
 * and {@code C = cov(a,b) + x0·var b}, it is {@code z = (k²C ± √(k⁴C² + g·k²V))/g} with {@code g =
 * b² − k²·var b}.
 *
 * <p>Edge results: a slope of 0, a reading that is not finite or a negative uncertainty is refused
 * with an {@link IllegalArgumentException}; g ≤ 0, a slope that does not differ from 0 at that
 * level, has {@linkplain FiellerInterval.Unbounded no finite interval}; all variances 0 give an
 * interval of one point.
 *
 * <p>Reference: E. C. Fieller, Some problems in interval estimation, J. R. Stat. Soc. B 16 (1954)
 * 175, doi 10.1111/j.2517-6161.1954.tb00159.x.
 *
 * @param line a, b and their covariance
 * @param y0 the reading
 * @param readingUncertainty u(y0), 0 or above
 */
public record InversePrediction(LineEstimate line, double y0, double readingUncertainty) {

  /** Refuses a line that reads nothing back. */
  public InversePrediction {
    if (line.slope() == 0) {
      throw new IllegalArgumentException("a line of slope 0 reads nothing back");
    }
    if (!Double.isFinite(y0)
        || !(readingUncertainty >= 0)
        || Double.isInfinite(readingUncertainty)) {
      throw new IllegalArgumentException(
          "a reading is finite, its uncertainty 0 or above, found "
              + y0
              + " and "
              + readingUncertainty);
    }
  }

  /** x0. */
  public double x() {
    return (y0 - line.intercept()) / line.slope();
  }

  /** u(x0), to first order. */
  public double standardUncertainty() {
    return Math.sqrt(variance()) / Math.abs(line.slope());
  }

  /**
   * The interval at a coverage factor.
   *
   * @param coverageFactor k, above 0: {@link StudentT#coverageFactor} of the level
   */
  public FiellerInterval fieller(double coverageFactor) {
    if (!(coverageFactor > 0) || Double.isInfinite(coverageFactor)) {
      throw new IllegalArgumentException(
          "a coverage factor is above 0 and finite, found " + coverageFactor);
    }
    double square = coverageFactor * coverageFactor;
    double slope = line.slope();
    double g = slope * slope - square * line.slopeVariance();
    if (!(g > 0)) {
      return new FiellerInterval.Unbounded(
          Math.abs(slope) / Math.sqrt(line.slopeVariance()), coverageFactor);
    }
    double x0 = x();
    double shift = square * (line.covariance() + x0 * line.slopeVariance());
    double width = Math.sqrt(shift * shift + g * square * variance());
    return new FiellerInterval.Bounded(x0 + (shift - width) / g, x0 + (shift + width) / g);
  }

  private double variance() {
    return readingUncertainty * readingUncertainty + line.varianceAt(x());
  }
}
