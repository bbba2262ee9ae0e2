package org.restpoint.stability.rest.forecast;

import java.util.Arrays;

/**
 * Curves weighed by how well they fit, and the mean of what they say.
 *
 * <pre>
 *   P ∝ P₀·s^(−ν)·det(1 + Λ⁻¹C)^(−1/2)
 *   E̅ = Σ P·E
 *   V = Σ P·(V(E)·max(1, s̄²/σ²) + (E − E̅)²)
 * </pre>
 *
 * Symbols as in {@link ResponseFit}, P₀ the likelihood before any reading, s̄² = Σ P·s². P is the
 * posterior of a normal error of unknown variance, ν its effective degrees of freedom; V holds how
 * far the curves disagree, so that a rest on which they do not agree is not taken for known. Where
 * no curve fits as well as the noise allows, all are known worse.
 *
 * <p>Edge results: a curve on activities whose rest is 0 or below has P = 0.
 *
 * <p>Reference: J. A. Hoeting, D. Madigan, A. E. Raftery, C. T. Volinsky, Statist. Sci. 14 (1999)
 * 382, doi 10.1214/ss/1009212519.
 */
final class ModelAverage {

  private static final double LEAST_ACTIVITY = 1e-4;

  private final Candidates candidates;
  private final Pairs pairs;
  private final double millivoltsPerNeper;
  private int likeliest;
  private double restMillivolts;
  private double variance;

  ModelAverage(Candidates candidates, Pairs pairs, double millivoltsPerNeper) {
    this.candidates = candidates;
    this.pairs = pairs;
    this.millivoltsPerNeper = millivoltsPerNeper;
  }

  void clear() {
    candidates.likelyCount = 0;
  }

  /**
   * Weighs the likely curves as they were fitted.
   *
   * @param best the least s², in mV²
   * @param freedom ν
   * @param noiseVariance σ² in mV²
   */
  void weigh(double best, double freedom, PriorTable prior, double noiseVariance) {
    double[] weight = candidates.weight;
    int[] likely = candidates.likely;
    Arrays.fill(weight, 0);
    double sum = 0;
    int kept = 0;
    for (int k = 0; k < candidates.likelyCount; k++) {
      int i = likely[k];
      double fit = -0.5 * freedom * Math.log(candidates.meanSquare[i] / best);
      double before = prior.of(i, candidates.restMillivolts[i]);
      weight[i] = before * Math.exp(fit) / Math.sqrt(candidates.freedom[i]);
      sum += weight[i];
      if (weight[i] > 0) {
        likely[kept] = i;
        kept++;
      }
    }
    candidates.likelyCount = kept;
    average(sum, noiseVariance);
  }

  private void average(double sum, double noiseVariance) {
    int[] likely = candidates.likely;
    int likelyCount = candidates.likelyCount;
    double mean = 0;
    double square = 0;
    likeliest = likely[0];
    for (int k = 0; k < likelyCount; k++) {
      int i = likely[k];
      candidates.weight[i] /= sum;
      mean += candidates.weight[i] * candidates.restMillivolts[i];
      square += candidates.weight[i] * candidates.meanSquare[i];
    }
    double worse = Math.max(1, square / noiseVariance);
    double total = 0;
    for (int k = 0; k < likelyCount; k++) {
      int i = likely[k];
      double off = candidates.restMillivolts[i] - mean;
      total += candidates.weight[i] * (candidates.variance[i] * worse + off * off);
      if (candidates.weight[i] > candidates.weight[likeliest]) {
        likeliest = i;
      }
    }
    restMillivolts = mean;
    variance = total;
  }

  /** What the likeliest curve of the last fit foretells, in mV since the first reading. */
  double foretell(double[] shapes) {
    int i = likeliest;
    if (Candidates.isOnActivities(i)) {
      double shape = shapes[i - Candidates.FIRST_ON_ACTIVITIES];
      double activity = candidates.rest[i] + candidates.amplitude[i] * shape;
      return millivoltsPerNeper * Math.log(Math.max(LEAST_ACTIVITY, activity));
    }
    return potential(i, shapes);
  }

  private double potential(int i, double[] shapes) {
    if (Candidates.isPair(i)) {
      int pair = i - Candidates.FIRST_PAIR;
      return candidates.rest[i]
          + candidates.amplitude[i] * shapes[pairs.fast(pair)]
          + candidates.slowAmplitude[pair] * shapes[pairs.slow(pair)];
    }
    return candidates.rest[i] + candidates.amplitude[i] * shapes[i];
  }

  /** E̅ in mV since the first reading. */
  double restMillivolts() {
    return restMillivolts;
  }

  /** V in mV². */
  double variance() {
    return variance;
  }

  /** P of all curves, in the order of {@link Candidates}. */
  double[] weights() {
    return candidates.weight.clone();
  }
}
