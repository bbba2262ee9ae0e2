package org.restpoint.stability.fit;

/**
 * Natural logarithm of the gamma function of a positive argument.
 *
 * <p>{@code Γ(a+1) = √(2π)·(a+g+½)^(a+½)·e^−(a+g+½)·A(a)} with g = 7 and nine terms in A, good to
 * about 10⁻¹⁵ of the larger of 1 and the result.
 *
 * <p>Reference: C. Lanczos, A precision approximation of the gamma function, J. SIAM Numer. Anal. B
 * 1 (1964) 86, doi 10.1137/0701008; coefficients by P. Godfrey, 2001, to the digits a double holds.
 */
final class LogGamma {

  private static final double G = 7;
  private static final double[] A = {
    0.9999999999998099,
    676.5203681218851,
    -1259.1392167224028,
    771.3234287776531,
    -176.6150291621406,
    12.507343278686905,
    -0.13857109526572012,
    9.984369578019572e-6,
    1.5056327351493116e-7
  };
  private static final double HALF_LOG_TWO_PI = 0.5 * Math.log(2 * Math.PI);

  /** From here on the series for the ratio is good to 10⁻¹⁴. */
  private static final double LARGE = 100;

  private LogGamma() {}

  static double of(double a) {
    double sum = A[0];
    double z = a - 1;
    for (int i = 1; i < A.length; i++) {
      sum += A[i] / (z + i);
    }
    double t = z + G + 0.5;
    return HALF_LOG_TWO_PI + (z + 0.5) * Math.log(t) - t + Math.log(sum);
  }

  /**
   * {@code ln Γ(a+½) − ln Γ(a)}; for large a by the asymptotic series, since the two terms cancel
   * (F. G. Tricomi, A. Erdélyi, Pacific J. Math. 1 (1951) 133, doi 10.2140/pjm.1951.1.133).
   */
  static double halfStep(double a) {
    if (a < LARGE) {
      return of(a + 0.5) - of(a);
    }
    double r = 1 / a;
    double series = r * (-1 / 8.0 + r * (1 / 128.0 + r * (5 / 1024.0 - r * 21 / 32768.0)));
    return 0.5 * Math.log(a) + Math.log1p(series);
  }
}
