package org.restpoint.stability.control;

import java.util.List;

/**
 * The limits of an individuals chart, from a base of values taken while nothing was wrong.
 *
 * <p>With the values x₁ … xₙ and their moving ranges {@code MRᵢ = |xᵢ − xᵢ₋₁|}: mean x̄, mean
 * moving range MR̄, {@code σ̂ = MR̄/d2}, limits {@code x̄ ± 3·σ̂} (that is x̄ ± 2.66·MR̄) and, for
 * the next moving range, {@code D4·MR̄}. The standard error of σ̂ as a share of it is {@code
 * √(0.8264·n − 1.082)/(n − 1)} for independent normal values.
 *
 * <p>Edge results: all values alike give σ̂ = 0, which is no chart ({@link #spreads} is false);
 * fewer than two values, or one that is not finite, are refused with an {@link
 * IllegalArgumentException}.
 *
 * <p>Reference: ISO 7870-2:2013, Control charts, Shewhart control charts (constants from memory);
 * NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, doi 10.18434/M32189; J. D. Cryer and T.
 * P. Ryan, J. Quality Technology 22 (1990) 187 (standard error; derived anew, source from memory).
 *
 * @param points n, 2 or more
 * @param mean x̄
 * @param meanMovingRange MR̄, 0 or above
 */
public record ControlLimits(int points, double mean, double meanMovingRange) {

  /**
   * d2 for ranges of two, 2/√π = 1.12838, as tables print it: mean range of two normal values in
   * standard deviations (ISO 7870-2; seen as 1.128 and 1.1284).
   */
  public static final double D2 = 1.128;

  /**
   * D4 for ranges of two, 1 + 3·d3/d2 = 1 + 3·0.8525/1.1284, as tables print it (ISO 7870-2; seen
   * as 3.267 and 3.2665).
   */
  public static final double D4 = 3.267;

  public ControlLimits {
    if (points < 2) {
      throw new IllegalArgumentException("limits need two values or more, not " + points);
    }
    if (!Double.isFinite(mean) || !(meanMovingRange >= 0) || Double.isInfinite(meanMovingRange)) {
      throw new IllegalArgumentException("limits are finite, and a range is 0 or above");
    }
  }

  /** The limits that a base gives, in the order taken. */
  public static ControlLimits of(List<Double> base) {
    if (base.isEmpty()) {
      throw new IllegalArgumentException("limits need two values or more, not 0");
    }
    double sum = 0;
    double ranges = 0;
    double before = base.get(0);
    for (double value : base) {
      sum += value;
      ranges += Math.abs(value - before);
      before = value;
    }
    return new ControlLimits(
        base.size(), sum / base.size(), base.size() < 2 ? 0 : ranges / (base.size() - 1));
  }

  /** σ̂, the standard deviation of a single value. */
  public double sigma() {
    return meanMovingRange / D2;
  }

  /** Whether the base spreads at all, so that there is something to measure a value by. */
  public boolean spreads() {
    return sigma() > 0;
  }

  /** x̄ + 3·σ̂. */
  public double upper() {
    return mean + 3 * sigma();
  }

  /** x̄ − 3·σ̂. */
  public double lower() {
    return mean - 3 * sigma();
  }

  /** The largest moving range to be expected. */
  public double upperRange() {
    return D4 * meanMovingRange;
  }

  /** Standard error of σ̂ as a share of it: 0.21 for n = 20. */
  public double relativeStandardErrorOfSigma() {
    return Math.sqrt(0.8264 * points - 1.082) / (points - 1);
  }

  /** How far a value lies from the mean, in σ̂; of limits that spread. */
  double sigmasFromMean(double value) {
    return (value - mean) / sigma();
  }
}
