package org.restpoint.stability.fit;

/**
 * The chi-square distribution.
 *
 * <p>{@code P(X > x) = Q(ν/2, x/2)}, the regularized upper incomplete gamma function: by its series
 * below {@code ν/2 + 1}, by its continued fraction (modified Lentz's method) above.
 *
 * <p>Edge results: x = 0 gives 0 below and 1 above; x = ∞ gives 1 and 0. A negative x, a
 * probability of 0 or 1 or outside, a ν not above 0 or not finite are refused with an {@link
 * IllegalArgumentException}.
 *
 * <p>Reference: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, NBS 1964, 6.5.29,
 * 6.5.31 and 26.4.19; W. J. Lentz, Appl. Opt. 15 (1976) 668, doi 10.1364/AO.15.000668.
 *
 * @param degreesOfFreedom ν, above 0
 */
public record ChiSquare(double degreesOfFreedom) {

  private static final int MOST_TERMS = 200_000;
  private static final double CLOSE = 1e-15;
  private static final double TINY = 1e-300;

  /** Refuses a ν not above 0. */
  public ChiSquare {
    if (!(degreesOfFreedom > 0) || Double.isInfinite(degreesOfFreedom)) {
      throw new IllegalArgumentException(
          "degrees of freedom are above 0 and finite, found " + degreesOfFreedom);
    }
  }

  /** Probability of a value up to {@code x}. */
  public double cumulative(double x) {
    requireNotNegative(x);
    return below(x) ? series(x) : 1 - fraction(x);
  }

  /** Probability of a value above {@code x}. */
  public double upperTail(double x) {
    requireNotNegative(x);
    return below(x) ? 1 - series(x) : fraction(x);
  }

  /** The x below which the share {@code probability} lies; above 0 and below 1. */
  public double quantile(double probability) {
    if (!(probability > 0 && probability < 1)) {
      throw new IllegalArgumentException(
          "a quantile needs a probability above 0 and below 1, found " + probability);
    }
    if (probability > 0.5) {
      return Quantile.where(this::upperTail, this::density, 1 - probability);
    }
    // The lower share falls with the reciprocal of x: the same search, without cancellation.
    double reciprocal =
        Quantile.where(
            r -> r == 0 ? 1 : cumulative(1 / r), r -> density(1 / r) / (r * r), probability);
    return 1 / reciprocal;
  }

  private boolean below(double x) {
    return 0.5 * x < 0.5 * degreesOfFreedom + 1;
  }

  private double density(double x) {
    return 0.5 * front(x) / (0.5 * x);
  }

  /** {@code (x/2)^(ν/2)·e^(−x/2)/Γ(ν/2)}. */
  private double front(double x) {
    double a = 0.5 * degreesOfFreedom;
    return Math.exp(a * Math.log(0.5 * x) - 0.5 * x - LogGamma.of(a));
  }

  private double series(double x) {
    if (x == 0) {
      return 0;
    }
    double a = 0.5 * degreesOfFreedom;
    double term = 1 / a;
    double sum = term;
    for (int n = 1; n < MOST_TERMS && term > CLOSE * sum; n++) {
      term *= 0.5 * x / (a + n);
      sum += term;
    }
    return Math.min(1, front(x) * sum);
  }

  private double fraction(double x) {
    if (Double.isInfinite(x)) {
      return 0;
    }
    double a = 0.5 * degreesOfFreedom;
    double b = 0.5 * x + 1 - a;
    double c = 1 / TINY;
    double d = 1 / b;
    double result = d;
    for (int n = 1; n < MOST_TERMS; n++) {
      double term = -n * (n - a);
      b += 2;
      d = 1 / notZero(term * d + b);
      c = notZero(b + term / c);
      result *= d * c;
      if (Math.abs(d * c - 1) < CLOSE) {
        break;
      }
    }
    return front(x) * result;
  }

  private static double notZero(double value) {
    return Math.abs(value) < TINY ? TINY : value;
  }

  private static void requireNotNegative(double x) {
    if (!(x >= 0)) {
      throw new IllegalArgumentException("a sum of squares is 0 or above, found " + x);
    }
  }
}
