package org.restpoint.stability.addition;

/**
 * A straight line {@code y = a + b·x} by least squares with weights {@code w = 1/u²(y)}.
 *
 * <p>With {@code W = Σw}, {@code x̄ = Σwx/W} and {@code Sxx = Σw(x−x̄)²}: {@code b =
 * Σw(x−x̄)(y−ȳ)/Sxx}, {@code a = ȳ − b·x̄}, {@code var b = 1/Sxx}, {@code χ² = Σw·(y−a−b·x)²}.
 *
 * <p>Edge results: x all alike gives a slope that is not a number; the caller looks before.
 * Reference: N. R. Draper, H. Smith, Applied Regression Analysis, 3rd ed., Wiley 1998, chapter 9.
 *
 * @param intercept a
 * @param slope b
 * @param slopeVariance var b, from the weights alone
 * @param chiSquare χ²
 */
record WeightedLine(double intercept, double slope, double slopeVariance, double chiSquare) {

  static WeightedLine through(double[] x, double[] y, double[] weights) {
    double sum = 0;
    double meanX = 0;
    double meanY = 0;
    for (int i = 0; i < x.length; i++) {
      sum += weights[i];
      meanX += weights[i] * x[i];
      meanY += weights[i] * y[i];
    }
    meanX /= sum;
    meanY /= sum;
    double sxx = 0;
    double sxy = 0;
    for (int i = 0; i < x.length; i++) {
      double dx = x[i] - meanX;
      sxx += weights[i] * dx * dx;
      sxy += weights[i] * dx * (y[i] - meanY);
    }
    double slope = sxy / sxx;
    double chiSquare = 0;
    for (int i = 0; i < x.length; i++) {
      double residual = y[i] - meanY - slope * (x[i] - meanX);
      chiSquare += weights[i] * residual * residual;
    }
    return new WeightedLine(meanY - slope * meanX, slope, 1 / sxx, chiSquare);
  }
}
