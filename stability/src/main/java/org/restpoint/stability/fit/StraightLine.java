package org.restpoint.stability.fit;

import java.util.OptionalDouble;

/**
 * A straight line through points by ordinary least squares.
 *
 * <p>{@code y = a + b·x}; with the means x̄, ȳ: {@code b = Σ(x−x̄)(y−ȳ) / Σ(x−x̄)²}, {@code a = ȳ −
 * b·x̄}; residual standard deviation {@code s = √(Σr²/(n−2))}; {@code var b = s²/Σ(x−x̄)²}, {@code
 * var a = s²·(1/n + x̄²/Σ(x−x̄)²)}, {@code cov(a,b) = −s²·x̄/Σ(x−x̄)²}. The sums are taken about
 * the means, in two passes.
 *
 * <p>Edge results: with two points the residual standard deviation is empty; all x alike, or a
 * coordinate that is not finite, has no line and is refused with an {@link
 * IllegalArgumentException}.
 *
 * <p>Reference: N. R. Draper and H. Smith, Applied Regression Analysis, 3rd ed., Wiley 1998,
 * chapter 1.
 *
 * @param points n, 2 or more
 * @param intercept a
 * @param slope b
 * @param meanX x̄
 * @param sumSquaresX Σ(x−x̄)², above zero
 * @param residualDeviation s; empty for two points
 * @param determination R², 0 to 1; 1 where all y are alike
 */
public record StraightLine(
    int points,
    double intercept,
    double slope,
    double meanX,
    double sumSquaresX,
    OptionalDouble residualDeviation,
    double determination) {

  /** Fits a line through {@code (x[i], y[i])}. */
  public static StraightLine through(double[] x, double[] y) {
    int n = x.length;
    if (n != y.length || n < 2) {
      throw new IllegalArgumentException("a line needs two points or more, each with x and y");
    }
    requireFinite(x);
    requireFinite(y);
    double meanX = mean(x);
    double meanY = mean(y);
    double sxx = 0;
    double sxy = 0;
    double syy = 0;
    for (int i = 0; i < n; i++) {
      double dx = x[i] - meanX;
      double dy = y[i] - meanY;
      sxx += dx * dx;
      sxy += dx * dy;
      syy += dy * dy;
    }
    if (!(sxx > 0)) {
      throw new IllegalArgumentException("all points have the same x: no line goes through them");
    }
    double slope = sxy / sxx;
    double residuals = 0;
    for (int i = 0; i < n; i++) {
      double r = (y[i] - meanY) - slope * (x[i] - meanX);
      residuals += r * r;
    }
    return new StraightLine(
        n,
        meanY - slope * meanX,
        slope,
        meanX,
        sxx,
        n > 2 ? OptionalDouble.of(Math.sqrt(residuals / (n - 2))) : OptionalDouble.empty(),
        syy > 0 ? Math.max(0, 1 - residuals / syy) : 1);
  }

  private static void requireFinite(double[] values) {
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("no line goes through a point at " + value);
      }
    }
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    double mean = sum / values.length;
    double correction = 0;
    for (double value : values) {
      correction += value - mean;
    }
    return mean + correction / values.length;
  }

  /** Variance of the slope for points with a standard deviation of {@code sigma} in y. */
  public double slopeVariance(double sigma) {
    return sigma * sigma / sumSquaresX;
  }

  /** Variance of the intercept for points with a standard deviation of {@code sigma} in y. */
  public double interceptVariance(double sigma) {
    return sigma * sigma * (1.0 / points + meanX * meanX / sumSquaresX);
  }

  /**
   * Covariance of intercept and slope for points with a standard deviation of {@code sigma} in y.
   */
  public double covariance(double sigma) {
    return -sigma * sigma * meanX / sumSquaresX;
  }
}
