package org.restpoint.stability.rest.forecast;

import java.util.List;

/**
 * What is known of the time constants of one kind of response curve, for one electrode: part of a
 * {@link ResponseHistory}. Numbers alone.
 *
 * <pre>
 *   ln τ = x₁ + x₂·d + x₃·l + e        d = −½ rising, +½ falling;  l in 60 mV;  e ~ N(0, s²)
 *   m    = h·x,   v = h·P·h + s² + q    h = (1, d, l)
 * </pre>
 *
 * An electrode is slower into a weaker solution than into a stronger one, and slower the weaker
 * both are: x₂ and x₃. All readings teach all three, so that a level or a direction that was seldom
 * seen is known from the others. s = {@value #SCATTER}: a time constant comes back to within a
 * third, as the film of water at a membrane is never twice the same (our choice); q is the spacing
 * of the row.
 *
 * <p>A reading is taken in by a Kalman step (R. E. Kalman, J. Basic Eng. 82 (1960) 35, doi
 * 10.1115/1.3662552, from memory). Before any, x₁ has the middle and the variance of the kind's
 * row, x₂ = 0 ± 0.5 and x₃ = 0 ± 0.2 (our choice). After each, P grows by what an electrode may
 * change: 0.03² in x₁, a quarter and a sixteenth of that in x₂ and x₃ (our choice: it ages by a
 * tenth in ten readings).
 *
 * @param likelihoodNepers how much likelier than the best of all kinds its readings were, 0 or
 *     below, older readings counting less
 * @param mean x
 * @param covariance P: P₁₁, P₁₂, P₁₃, P₂₂, P₂₃, P₃₃
 */
public record KindTimes(double likelihoodNepers, List<Double> mean, List<Double> covariance) {

  static final double SCATTER = 0.3;

  private static final int SIZE = 3;
  private static final int[][] PLACE = {{0, 1, 2}, {1, 3, 4}, {2, 4, 5}};
  private static final double FALLING_VARIANCE = 0.5 * 0.5;
  private static final double LEVEL_VARIANCE = 0.2 * 0.2;
  private static final double[] CHANGES = {0.03 * 0.03, 0.03 * 0.03 / 4, 0.03 * 0.03 / 16};

  public KindTimes {
    mean = List.copyOf(mean);
    covariance = List.copyOf(covariance);
    if (mean.size() != SIZE || covariance.size() != SIZE * (SIZE + 1) / 2) {
      throw new IllegalArgumentException("a kind's times are 3 numbers and 6 of a covariance");
    }
    for (double number : mean) {
      requireFinite(number);
    }
    for (double number : covariance) {
      requireFinite(number);
    }
    if (!(likelihoodNepers <= 0) || Double.isInfinite(likelihoodNepers)) {
      throw new IllegalArgumentException(
          "no kind is likelier than the best of all, so it has 0 or less, not " + likelihoodNepers);
    }
  }

  private static void requireFinite(double number) {
    if (!Double.isFinite(number)) {
      throw new IllegalArgumentException("what is known of times is finite, not " + number);
    }
  }

  /**
   * A normal distribution of ln τ.
   *
   * @param mean m
   * @param variance v, above 0
   */
  record Normal(double mean, double variance) {

    /** How likely a value is, up to a factor. */
    double at(double lnSeconds) {
      double off = lnSeconds - mean;
      return Math.exp(-0.5 * off * off / variance);
    }
  }

  /** Nothing is known. */
  static KindTimes unknown(int kind) {
    return new KindTimes(
        0,
        List.of(CurveKinds.middle(kind), 0.0, 0.0),
        List.of(CurveKinds.variance(kind), 0.0, 0.0, FALLING_VARIANCE, 0.0, LEVEL_VARIANCE));
  }

  /** The times to expect of the kind in a direction at a level. */
  Normal at(int kind, boolean rising, double level) {
    double[] h = place(rising, level);
    double variance = SCATTER * SCATTER + CurveKinds.roundingVariance(kind);
    return new Normal(dot(h, mean), dot(h, spread(h)) + variance);
  }

  /**
   * With what a reading has told.
   *
   * @param told ln τ and how well the reading alone tells it
   * @param share how far the reading is one to be learnt from, above 0 to 1
   */
  KindTimes with(boolean rising, double level, Normal told, double share) {
    double[] h = place(rising, level);
    double[] spread = spread(h);
    double variance = (dot(h, spread) + SCATTER * SCATTER + told.variance()) / share;
    double off = told.mean() - dot(h, mean);
    Double[] x = new Double[SIZE];
    Double[] p = new Double[covariance.size()];
    for (int i = 0; i < SIZE; i++) {
      x[i] = mean.get(i) + spread[i] / variance * off;
      for (int j = i; j < SIZE; j++) {
        double kept = covariance.get(PLACE[i][j]) - spread[i] * spread[j] / variance;
        p[PLACE[i][j]] = kept + (i == j ? CHANGES[i] : 0);
      }
    }
    return new KindTimes(likelihoodNepers, List.of(x), List.of(p));
  }

  KindTimes withLikelihood(double nepers) {
    return new KindTimes(nepers, mean, covariance);
  }

  private static double[] place(boolean rising, double level) {
    return new double[] {1, rising ? -0.5 : 0.5, level};
  }

  private double[] spread(double[] h) {
    double[] spread = new double[SIZE];
    for (int i = 0; i < SIZE; i++) {
      for (int j = 0; j < SIZE; j++) {
        spread[i] += covariance.get(PLACE[i][j]) * h[j];
      }
    }
    return spread;
  }

  private static double dot(double[] h, List<Double> x) {
    return h[0] * x.get(0) + h[1] * x.get(1) + h[2] * x.get(2);
  }

  private static double dot(double[] h, double[] x) {
    return h[0] * x[0] + h[1] * x[1] + h[2] * x[2];
  }
}
