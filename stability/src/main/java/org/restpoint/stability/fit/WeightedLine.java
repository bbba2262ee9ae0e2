package org.restpoint.stability.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A straight line through points of known standard uncertainties by weighted least squares.
 *
 * <p>{@code y = a + b·x}, weights {@code w = 1/u²}; with the weighted means x̄, ȳ: {@code b =
 * Σw(x−x̄)(y−ȳ)/Σw(x−x̄)²}, {@code a = ȳ − b·x̄}; {@code var b = 1/Σw(x−x̄)²}, {@code var a = 1/Σw
 * + x̄²·var b}, {@code cov(a,b) = −x̄·var b}. The uncertainties are taken as they are: the scatter
 * changes a variance only through {@link #inflatedEstimate()}. Sums are taken about the means, in
 * two passes, with the weights in units of the largest, so that points of one uncertainty give
 * {@link StraightLine} itself.
 *
 * <p>Edge results: two points have no residual deviation and are consistent; all x alike, a
 * coordinate that is not finite or an uncertainty not above 0 has no line and is refused with an
 * {@link IllegalArgumentException}.
 *
 * <p>Reference: N. R. Draper and H. Smith, Applied Regression Analysis, 3rd ed., Wiley 1998,
 * chapters 8 and 9; W. E. Deming, Statistical Adjustment of Data, Wiley 1943.
 *
 * @param estimate a, b and their covariance, from the uncertainties of the points
 * @param points the points in the order given, each with its residual
 * @param consistency χ² = Σ(r/u)² with n − 2 degrees of freedom
 * @param residualDeviation {@code √(Σw·r²/Σw · n/(n−2))}, in the unit of y; for points of one
 *     uncertainty the residual standard deviation; empty for two points
 * @param determination weighted R², 0 to 1; 1 where all y are alike
 */
public record WeightedLine(
    LineEstimate estimate,
    List<FittedPoint> points,
    Consistency consistency,
    OptionalDouble residualDeviation,
    double determination) {

  /** A residual of this share of the largest |y| is rounding. */
  static final double ROUNDING = 1e-12;

  /** Keeps a copy of the points. */
  public WeightedLine {
    points = List.copyOf(points);
  }

  /** Fits a line through {@code (x[i], y[i])} with the standard uncertainty {@code u[i]} of y. */
  public static WeightedLine through(double[] x, double[] y, double[] u) {
    Observations.require(2, x, y, u);
    double smallest = Observations.smallest(u);
    double[] weights = new double[u.length];
    for (int i = 0; i < u.length; i++) {
      double ratio = smallest / u[i];
      weights[i] = ratio * ratio;
    }
    double sum = Observations.sum(weights);
    double meanX = Observations.mean(x, weights, sum);
    double meanY = Observations.mean(y, weights, sum);
    double sxx = 0;
    double sxy = 0;
    double syy = 0;
    for (int i = 0; i < x.length; i++) {
      double dx = x[i] - meanX;
      double dy = y[i] - meanY;
      sxx += weights[i] * dx * dx;
      sxy += weights[i] * dx * dy;
      syy += weights[i] * dy * dy;
    }
    if (!(sxx > 0)) {
      throw new IllegalArgumentException("all points have the same x: no line goes through them");
    }
    double slope = sxy / sxx;
    double intercept = meanY - slope * meanX;
    List<FittedPoint> points = new ArrayList<>(x.length);
    double squares = 0;
    for (int i = 0; i < x.length; i++) {
      double dx = x[i] - meanX;
      double residual = (y[i] - meanY) - slope * dx;
      squares += weights[i] * residual * residual;
      double share = weights[i] / sum;
      double onSlope = weights[i] * dx / sxx;
      points.add(
          new FittedPoint(
              x[i],
              y[i],
              u[i],
              residual,
              Math.min(1, share + onSlope * dx),
              share - meanX * onSlope,
              onSlope));
    }
    int freedom = x.length - 2;
    double unit = smallest * smallest;
    double slopeVariance = unit / sxx;
    return new WeightedLine(
        new LineEstimate(
            intercept,
            slope,
            unit * (1 / sum + meanX * meanX / sxx),
            slopeVariance,
            -meanX * slopeVariance),
        points,
        new Consistency(squares / unit, freedom),
        freedom > 0
            ? OptionalDouble.of(Math.sqrt(squares / sum * x.length / freedom))
            : OptionalDouble.empty(),
        syy > 0 ? Math.max(0, 1 - squares / syy) : 1);
  }

  /** The fit, or empty where all x are alike. */
  static Optional<WeightedLine> ifAny(double[] x, double[] y, double[] u) {
    for (double value : x) {
      if (value != x[0]) {
        return Optional.of(through(x, y, u));
      }
    }
    return Optional.empty();
  }

  /** a, b and their covariance, larger by the Birge ratio where the scatter is inconsistent. */
  public LineEstimate inflatedEstimate() {
    return estimate.inflatedBy(consistency.inflation());
  }

  /**
   * The residual of a point in standard deviations estimated from the other points alone: with
   * {@code e = r/(u·√(1−h))} and χ² of the line through the n − 1 others, {@code e·√((n−3)/χ²)},
   * Student's t with n − 3 degrees of freedom. Infinite where the others lie on a line to rounding.
   *
   * @return empty for three points or fewer, and for a point that the line follows wherever it lies
   */
  public OptionalDouble externallyStudentized(int index) {
    FittedPoint left = points.get(index);
    OptionalDouble standardized = left.standardized();
    if (points.size() < 4 || standardized.isEmpty()) {
      return OptionalDouble.empty();
    }
    double shift = left.residual() / (1 - left.leverage());
    double chiSquare = 0;
    double largestResidual = 0;
    double largestY = 0;
    for (int i = 0; i < points.size(); i++) {
      FittedPoint point = points.get(i);
      largestY = Math.max(largestY, Math.abs(point.y()));
      if (i != index) {
        double residual =
            point.residual()
                + shift * (left.interceptSensitivity() + left.slopeSensitivity() * point.x());
        double r = residual / point.standardUncertainty();
        chiSquare += r * r;
        largestResidual = Math.max(largestResidual, Math.abs(residual));
      }
    }
    double e = standardized.getAsDouble();
    if (Math.abs(left.residual()) <= ROUNDING * largestY) {
      return OptionalDouble.of(0);
    }
    return OptionalDouble.of(
        largestResidual > ROUNDING * largestY
            ? e * Math.sqrt((points.size() - 3) / chiSquare)
            : Math.copySign(Double.POSITIVE_INFINITY, e));
  }
}
