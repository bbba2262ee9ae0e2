package org.restpoint.stability.fit;

/**
 * Student's t distribution.
 *
 * <p>{@code P(T > t) = ½·I_x(ν/2, ½)} for t ≥ 0 with {@code x = ν/(ν+t²)}, the regularized
 * incomplete beta function, by its continued fraction (modified Lentz's method), on the side of the
 * mean where that converges fast. An infinite ν is the normal distribution.
 *
 * <p>Edge results: t = 0 gives ½; t = ±∞ gives 0 and 1; a quantile of ½ is 0. A probability of 0 or
 * 1 or outside has no finite quantile and is refused with an {@link IllegalArgumentException}, as
 * is a ν not above 0.
 *
 * <p>Reference: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, NBS 1964, 26.5.8
 * and 26.7.1; W. J. Lentz, Appl. Opt. 15 (1976) 668, doi 10.1364/AO.15.000668.
 *
 * @param degreesOfFreedom ν, above 0, infinite for the normal distribution
 */
public record StudentT(double degreesOfFreedom) {

  private static final int MOST_TERMS = 200_000;
  private static final double CLOSE = 1e-15;
  private static final double TINY = 1e-300;
  private static final double LOG_SQRT_PI = 0.5 * Math.log(Math.PI);

  /** Past this the t distribution and the normal one differ by less than 10⁻⁹. */
  private static final double AS_GOOD_AS_NORMAL = 1e9;

  /** Refuses a ν not above 0. */
  public StudentT {
    if (!(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException(
          "degrees of freedom are above 0, found " + degreesOfFreedom);
    }
  }

  /** The normal distribution, to be used where the standard deviation is known. */
  public static StudentT normal() {
    return new StudentT(Double.POSITIVE_INFINITY);
  }

  /** Probability of a value up to {@code t}. */
  public double cumulative(double t) {
    return upperTail(-t);
  }

  /** Probability of a value above {@code t}. */
  public double upperTail(double t) {
    if (Double.isNaN(t)) {
      throw new IllegalArgumentException("t is a number");
    }
    return t >= 0 ? tail(t) : 1 - tail(-t);
  }

  /** The t below which the share {@code probability} lies; above 0 and below 1. */
  public double quantile(double probability) {
    if (!(probability > 0 && probability < 1)) {
      throw new IllegalArgumentException(
          "a quantile needs a probability above 0 and below 1, found " + probability);
    }
    if (probability == 0.5) {
      return 0;
    }
    double q = Math.min(probability, 1 - probability);
    double t = Quantile.where(this::tail, this::density, q);
    return probability < 0.5 ? -t : t;
  }

  /** The t between whose two signs the share {@code level} lies: the coverage factor. */
  public double coverageFactor(double level) {
    if (!(level > 0 && level < 1)) {
      throw new IllegalArgumentException("a level is above 0 and below 1, found " + level);
    }
    return Quantile.where(this::tail, this::density, 0.5 * (1 - level));
  }

  private double tail(double t) {
    if (degreesOfFreedom > AS_GOOD_AS_NORMAL) {
      return 0.5 * new ChiSquare(1).upperTail(t * t);
    }
    double ratio = t / degreesOfFreedom * t;
    if (ratio == 0) {
      return 0.5;
    }
    if (Double.isInfinite(ratio)) {
      return 0;
    }
    double a = 0.5 * degreesOfFreedom;
    double share = 1 / (1 + ratio);
    double front =
        Math.exp(
            LogGamma.halfStep(a)
                - LOG_SQRT_PI
                - (a + 0.5) * Math.log1p(ratio)
                + 0.5 * Math.log(ratio));
    if (share < (a + 1) / (a + 2.5)) {
      return 0.5 * front * fraction(a, 0.5, share) / a;
    }
    return 0.5 - front * fraction(0.5, a, ratio / (1 + ratio));
  }

  private double density(double t) {
    if (degreesOfFreedom > AS_GOOD_AS_NORMAL) {
      return Math.exp(-0.5 * t * t) / Math.sqrt(2 * Math.PI);
    }
    double a = 0.5 * degreesOfFreedom;
    return Math.exp(
        LogGamma.halfStep(a)
            - LOG_SQRT_PI
            - 0.5 * Math.log(degreesOfFreedom)
            - (a + 0.5) * Math.log1p(t / degreesOfFreedom * t));
  }

  private static double fraction(double a, double b, double x) {
    double c = 1;
    double d = 1 / notZero(1 - (a + b) * x / (a + 1));
    double result = d;
    for (int m = 1; m < MOST_TERMS; m++) {
      double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
      d = 1 / notZero(1 + even * d);
      c = notZero(1 + even / c);
      result *= d * c;
      double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
      d = 1 / notZero(1 + odd * d);
      c = notZero(1 + odd / c);
      result *= d * c;
      if (Math.abs(d * c - 1) < CLOSE) {
        break;
      }
    }
    return result;
  }

  private static double notZero(double value) {
    return Math.abs(value) < TINY ? TINY : value;
  }
}
